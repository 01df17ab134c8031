"""What the drawing calls for, and by which rules the weld is judged."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from exercises.coupon import Coupon
from exercises.rules import RULE_SETS, RuleSet
from geometry.lengths import Unit
from trainer.bench.words import rules_word
from trainer.settings import SymbolStandard
from trainer.shop.choices import Check, Choice
from trainer.shop.entry import Take
from trainer.shop.fields import value_of
from trainer.shop.form import Form
from trainer.symbols.drawn import convention_for, symbol_of
from trainer.symbols.view import SymbolView
from trainer.symbols.words import symbol_words

__all__ = ["DrawingForm"]


class DrawingForm(Form):
    """Callout, rules, conditions.

    Signals
    -------
    rules_asked()
        What the rules say is wanted.
    """

    rules_asked = Signal()

    def __init__(self, take: Take, choose: Take, parent: QWidget | None = None) -> None:
        super().__init__(take, choose, parent)
        self.heading(self.tr("Callout"))
        self.symbol = SymbolView()
        self.symbol.setMinimumHeight(64)
        self.widget_row(self.symbol)
        measures = (("leg", self.tr("leg (z)")), ("throat", self.tr("throat (a)")))
        self.put(Choice("callout.measure", self.tr("Sized by"), measures, choose))
        self.entry("callout.size", self.tr("Size"), "size")
        self.entry("callout.upright_size", self.tr("Upright leg, if it differs"), "size",
                   optional=True)  # fmt: skip
        sides = (
            ("arrow", self.tr("arrow side")),
            ("other", self.tr("other side")),
            ("both", self.tr("both sides")),
        )
        self.put(Choice("callout.side", self.tr("Side"), sides, choose))
        self.entry("callout.tail", self.tr("Tail"), "text", optional=True)
        for key, words in (
            ("callout.all_around", self.tr("All around")),
            ("callout.site", self.tr("Made on site")),
            ("callout.built_out", self.tr("Built out to the full edge")),
        ):
            self.put(Check(key, words, choose))
        self.heading(self.tr("In pieces"))
        self.entry("callout.length", self.tr("Length of a piece"), "length", optional=True)
        spacings = (("pitch", self.tr("pitch, centre to centre")), ("gap", self.tr("clear gap")))
        self.put(Choice("callout.spacing", self.tr("Spacing by"), spacings, choose))
        self.entry("callout.distance", self.tr("Spacing"), "length")
        self.entry("callout.count", self.tr("Count"), "count", optional=True)
        self.put(Check("callout.staggered", self.tr("Staggered"), choose))
        self.heading(self.tr("Rules"))
        self.put(Choice("rules", self.tr("Rule set"), (), choose))
        self.rules = QPushButton(self.tr("What they say"))
        self.rules.setProperty("kind", "segment")
        self.rules.clicked.connect(self.rules_asked)
        self.widget_row(self.rules)
        self.group()
        self.entry("extent", self.tr("Share of the length that is so"), "share")
        self.heading(self.tr("What the rules may ask"))
        edges = (
            ("", self.tr("no edge")),
            ("base", self.tr("base")),
            ("upright", self.tr("upright")),
        )
        self.put(Choice("conditions.edge", self.tr("Along the edge of"), edges, choose))
        self.entry("conditions.weld_length", self.tr("Length of the weld"), "length", optional=True)
        for key, words in (
            ("conditions.low_hydrogen", self.tr("Low hydrogen, or preheated")),
            ("conditions.transverse_tension", self.tr("Across a primary member's tension")),
            ("conditions.girder_end", self.tr("Web to flange at a girder's end")),
        ):
            self.put(Check(key, words, choose))
        self.heading(self.tr("Leaf and eye"))
        self.entry("eye_limit", self.tr("Eye limit"), "length")
        self.entry("leaf_wear", self.tr("Wear of the leaf"), "length")
        self.finish()

    def show_coupon(
        self,
        coupon: Coupon,
        of: str,
        unit: Unit,
        rules: Mapping[str, RuleSet],
        symbols: SymbolStandard | None,
    ) -> None:
        """Show a coupon's callout and its rules."""
        chooser = self.fields["rules"]
        assert isinstance(chooser, Choice)
        own = {**RULE_SETS, **rules}
        chooser.offer([(name, rules_word(each)) for name, each in own.items()])
        for key in self.fields:
            self.show_entry(key, of, value_of(coupon, key), unit)
        whole = coupon.callout.intermittent is None
        for key in ("callout.spacing", "callout.distance", "callout.count", "callout.staggered"):
            self.show_field(key, visible=not whole)
        self.show_field("callout.upright_size", visible=coupon.callout.measure == "leg")
        convention = convention_for(coupon.callout, symbols)
        self.symbol.show_symbol(
            symbol_of(coupon.callout, convention), symbol_words(coupon.callout, convention, unit)
        )
