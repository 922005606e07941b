"""A group of commands whose help shows the whole first sentence of each."""

from __future__ import annotations

import click


class Listed(click.Group):
    """A group that wraps what its commands say of themselves instead of cutting it."""

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the list of commands."""
        rows = []
        for name in self.list_commands(ctx):
            command = self.get_command(ctx, name)
            if command is not None and not command.hidden:
                said = (command.help or "").split("\n\n", 1)[0]
                rows.append((name, " ".join(said.split())))
        with formatter.section("Commands"):
            formatter.write_dl(rows)
