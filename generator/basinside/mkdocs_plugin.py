"""The host's side: MkDocs reads mkdocs.yml, watches, serves and writes; the rest is ours.

The only file that imports mkdocs. From ``content/`` nothing is copied: every file of the folder
is made by the pipeline.
"""

from __future__ import annotations

import gc
import logging
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files

from basinside.pipeline import build as pipeline
from basinside.problem import Level, Placed

log = get_plugin_logger("basinside")

_LOUDNESS = {Level.INFO: logging.DEBUG, Level.WARN: logging.WARNING}


class HandbookFile(File):
    """A file that makes its text when MkDocs writes it, so that one at a time is in memory."""

    def __init__(self, path: str, config: MkDocsConfig, make: Callable[[], str]) -> None:
        super().__init__(path, None, config.site_dir, use_directory_urls=False)
        self.make = make

    def copy_file(self, dirty: bool = False) -> None:  # noqa: ARG002, FBT001 - as MkDocs calls it
        """Write the file: UTF-8, line feeds on every system."""
        pipeline.write_made(Path(self.abs_dest_path), self.make().encode())

    def is_modified(self) -> bool:
        """Whether it may differ from what lies in the site folder: nobody knows before."""
        return True


class BasinsidePlugin(BasePlugin):  # type: ignore[type-arg, no-untyped-call]
    """Builds the handbook folder from ``content/`` and ``quizzes/``."""

    def __init__(self) -> None:
        self.memory = pipeline.Memory()
        self.page_memory = pipeline.PageMemory()
        self.preview = False
        self.last_good: pipeline.Clinic | None = None
        self.now: pipeline.Clinic | None = None
        self.before: pipeline.Clinic | None = None
        self.problems: tuple[Placed, ...] = ()
        self.theme: pipeline.Theme | None = None

    def on_startup(
        self,
        *,
        command: Literal["build", "gh-deploy", "serve"],
        dirty: bool,  # noqa: ARG002 - as MkDocs calls it
    ) -> None:
        """Note whether this is a preview; having this keeps the instance over rebuilds."""
        self.preview = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read and check before MkDocs empties the site folder, so the last good one survives."""
        gc.disable()  # nothing here makes cycles; the collector would take a third of the time
        root = Path(config.config_file_path).parent if config.config_file_path else Path()
        config.use_directory_urls = False
        config.theme.static_templates.discard("sitemap.xml")
        config.theme.static_templates.discard("404.html")
        if self.preview:
            config.watch.extend(
                str(path) for path in (root / "quizzes", pipeline.theme_folder()) if path.is_dir()
            )
        try:
            if not self.preview:
                pipeline.check_site_folder(root, Path(config.site_dir))
            clinic = pipeline.read_clinic(
                root, memory=self.memory if self.preview else None, before=self.before
            )
        except pipeline.FolderError as error:
            if self.last_good is None:
                raise PluginError(str(error)) from None
            self.problems = (pipeline.folder_problem(root, error),)
            self._say()
            self.now = self.last_good
            return config
        self.before = clinic if self.preview else None
        self.problems = pipeline.place_problems(clinic)
        self._say()
        if not clinic.stops:
            self.now = self.last_good = clinic
        elif self.preview:
            self.now = self.last_good or clinic
        else:
            log.error("%s", pipeline.summary_line(self.problems))
            raise Abort("Nothing was written; a handbook built before stays as it was.")
        return config

    def on_files(self, files: Files, config: MkDocsConfig) -> Files:  # noqa: ARG002
        """Replace whatever MkDocs found by the files of the handbook folder."""
        return Files([HandbookFile(path, config, make) for path, make in self._files()])

    def _files(self) -> Iterator[pipeline.Made]:
        if self.now is None:
            return
        stopped = any(each.problem.stops for each in self.problems)
        self.theme = theme = pipeline.open_theme(self.theme)
        if stopped and self.last_good is None:
            yield from pipeline.problem_files(self.now, theme, self.problems)
            return
        yield from pipeline.handbook_files(
            self.now,
            theme,
            memory=self.page_memory if self.preview else None,
            problems=self.problems if self.preview else (),
            preview=self.preview,
        )

    def on_post_build(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - as MkDocs calls it
        """Give the collector back under preview; at the end of a build nothing is left to find."""
        if self.preview:
            gc.enable()
        else:
            gc.freeze()

    def _say(self) -> None:
        for each in self.problems:
            problem = each.problem
            level = _LOUDNESS.get(problem.level, logging.ERROR)
            log.log(logging.INFO if problem.waived_by else level, "%s", each)
