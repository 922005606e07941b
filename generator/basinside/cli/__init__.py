"""Arguments in, exit code out; every command says what it did in an author's words."""

from __future__ import annotations

import click
from click.exceptions import NoArgsIsHelpError

from basinside.cli.amounts import amount
from basinside.cli.author import AUTHOR_COMMANDS
from basinside.cli.coverage import coverage
from basinside.cli.demo import demo, new
from basinside.cli.desk import DESK_COMMANDS
from basinside.cli.editions import changes, edition, schemas
from basinside.cli.listed import Listed
from basinside.cli.plain_words import plainer
from basinside.cli.prints import print_command
from basinside.cli.where import where
from basinside.pipeline.build import FolderError
from basinside.pipeline.refusal import RefusedError


class Plain(Listed):
    """A group whose expected errors are one line without a traceback."""

    def invoke(self, ctx: click.Context) -> object:
        """Run a command."""
        try:
            return super().invoke(ctx)
        except NoArgsIsHelpError:
            raise
        except click.UsageError as error:
            raise plainer(error) from None
        except FolderError as error:
            click.echo(str(error), err=True)
            ctx.exit(2)
        except RefusedError as error:
            click.echo(str(error), err=True)
            ctx.exit(1)


@click.group(cls=Plain, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="basinside")
def main() -> None:
    """Make an offline handbook for reprocessing instruments, and certify who may work alone."""


for _command in (
    new,
    demo,
    *AUTHOR_COMMANDS,
    amount,
    print_command,
    schemas,
    edition,
    changes,
    where,
    coverage,
    *DESK_COMMANDS,
):
    main.add_command(_command)
