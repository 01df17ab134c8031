"""The panels about the picture, made one after the other: together they take a while."""

from __future__ import annotations

from collections.abc import Iterator

from trainer.bench.call_panel import CallPanel, RecordBar
from trainer.bench.job_card import JobCard
from trainer.bench.layout import BenchLayout
from trainer.bench.rack_panel import RackPanel

__all__ = ["BenchPanels"]


class BenchPanels:
    """What stands below and beside the picture; each panel is made when it is first asked for.

    Parameters
    ----------
    bench
        Where they stand.
    """

    def __init__(self, bench: BenchLayout) -> None:
        self._bench = bench
        self._rack: RackPanel | None = None
        self._card: JobCard | None = None
        self._call: CallPanel | None = None
        self._record: RecordBar | None = None

    def __iter__(self) -> Iterator[None]:
        """Make them, with a pause after each."""
        _ = self.rack
        yield
        _ = self.card
        yield
        _ = self.call
        yield
        _ = self.record
        yield

    @property
    def rack(self) -> RackPanel:
        """Below the picture."""
        if self._rack is None:
            self._rack = RackPanel()
            self._bench.foot_box.addWidget(self._rack)
        return self._rack

    @property
    def card(self) -> JobCard:
        """Top of the column."""
        if self._card is None:
            self._card = JobCard()
            self._bench.side_box.insertWidget(0, self._card)
        return self._card

    @property
    def call(self) -> CallPanel:
        """Under the job card."""
        if self._call is None:
            self._call = CallPanel()
            self._bench.side_box.insertWidget(
                self._bench.side_box.indexOf(self.card) + 1, self._call
            )
        return self._call

    @property
    def record(self) -> RecordBar:
        """At the column's end, always in sight."""
        if self._record is None:
            self._record = RecordBar()
            self._bench.pinned_box.addWidget(self._record)
        return self._record
