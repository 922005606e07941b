"""What pyproject.toml cannot say: two source roots, and the demo handbook carried by the wheel.

``basinside`` lies in generator/, ``basinside.theme`` is site_theme/. The demo handbook (content/,
quizzes/, mkdocs.yml) is copied into the wheel as basinside/demo/, so that ``basinside demo`` works
without a checkout. An editable install copies nothing: the demo is then the checkout's own.
"""

import os
import shutil

from setuptools import find_packages, setup
from setuptools.command.build_py import build_py

DEMO = ("content", "quizzes", "mkdocs.yml")
NEVER = shutil.ignore_patterns("__pycache__", "*.pyc", ".*.swp", ".DS_Store")


class BuildWithDemo(build_py):  # type: ignore[misc]
    """Build the packages, then lay the demo handbook beside them."""

    def run(self) -> None:
        super().run()
        if self.editable_mode:
            return
        home = os.path.join(self.build_lib, "basinside", "demo")
        shutil.rmtree(home, ignore_errors=True)
        os.makedirs(home)
        for name in DEMO:
            if os.path.isdir(name):
                shutil.copytree(name, os.path.join(home, name), ignore=NEVER)
            else:
                shutil.copy2(name, home)


setup(
    package_dir={"": "generator", "basinside.theme": "site_theme"},
    packages=[*find_packages("generator"), "basinside.theme"],
    package_data={
        "basinside": ["**/*", "starter/**/.*"],
        "basinside.theme": ["**/*"],
    },
    exclude_package_data={"": ["*.pyc"]},
    include_package_data=False,
    cmdclass={"build_py": BuildWithDemo},
)
