"""The one painter: screen, loupe, SVG, PNG and PDF are all drawn here."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from trainer.canvas.backing import paint_backing, paint_through
from trainer.canvas.blade import paint_blade
from trainer.canvas.furniture import paint_scale_bar, paint_tether, scale_bar_box
from trainer.canvas.light import paint_bloom, paint_even_light, paint_grid, paint_light
from trainer.canvas.loupe import Lens, lens_of, paint_lens
from trainer.canvas.overlay import paint_overlays, placed_labels
from trainer.canvas.scene import Scene
from trainer.canvas.shapes import Shapes
from trainer.canvas.steel import paint_steel
from trainer.canvas.view import Box, View

__all__ = ["label_boxes", "paint", "paint_leaf", "paint_loupe", "paint_over", "paint_still"]


def paint(painter: QPainter, scene: Scene, view: View, shapes: Shapes | None = None) -> None:
    """Paint `scene` as it stands in `view`, from the painter's origin right and down.

    Parameters
    ----------
    painter
        On any device, its transform kept; one unit is a logical pixel.
    scene, view
        What to show, and where from.
    shapes
        Paths kept from earlier paintings; without them they are built anew.
    """
    shapes = shapes or Shapes()
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_still(painter, scene, view, shapes)
    paint_leaf(painter, scene, view, shapes)
    lens = lens_of(scene, view, shapes)
    paint_over(painter, scene, view, lens)
    if lens is not None:
        paint_loupe(painter, scene, lens, shapes)
    painter.restore()


def paint_still(
    painter: QPainter, scene: Scene, view: View, shapes: Shapes, *, in_glass: bool = False
) -> None:
    """Paint what stands still while a leaf is handled: light, grid, a picture behind, section.

    Behind the loupe's glass the light is even, so that every gap in it is as bright.
    """
    paths = shapes.section(scene.section) if scene.section is not None else None
    work = paths.drawing.middle if paths is not None else (0.0, 0.0)
    if in_glass:
        paint_even_light(painter, view, scene.theme)
    else:
        paint_light(painter, view, scene.theme, work)
    if scene.grid:
        paint_grid(painter, view, scene.theme, scene.unit, faint=in_glass)
        if not in_glass:
            paint_bloom(painter, view, scene.theme, work)
    pictured = scene.backing is not None and paint_backing(painter, scene.backing, view)
    if paths is None:
        return
    if pictured:
        paint_through(painter, paths, view, scene.theme)
    else:
        paint_steel(painter, paths, view, scene.theme)


def paint_leaf(painter: QPainter, scene: Scene, view: View, shapes: Shapes) -> None:
    """Paint the leaf, if the scene has one."""
    if scene.leaf is None or scene.pose is None:
        return
    paths = shapes.blade(scene.leaf)
    lit = scene.hover or scene.held
    paint_blade(painter, paths, scene.pose, view, scene.theme, lit=lit, held=scene.held)


def _taken(scene: Scene, view: View, lens: Lens | None) -> tuple[Box, ...]:
    """What no label may lie on, logical px."""
    taken = [scale_bar_box(view, scene.unit, scene.theme)] if scene.scale_bar else []
    taken += scene.covered
    return tuple(taken) if lens is None else (*taken, lens.box)


def label_boxes(scene: Scene, view: View, lens: Lens | None = None) -> list[QRectF]:
    """Return where the labels of the overlays are painted, logical px."""
    placed = placed_labels(scene.overlays, view, scene.theme, _taken(scene, view, lens))
    return [label.rect for label in placed]


def paint_over(painter: QPainter, scene: Scene, view: View, lens: Lens | None = None) -> None:
    """Paint what lies over the picture: overlays (labels clear of the loupe), tether, scale bar."""
    if scene.overlays:
        paint_overlays(painter, scene.overlays, view, scene.theme, _taken(scene, view, lens))
    if scene.tether is not None:
        paint_tether(painter, scene.tether, view, scene.theme)
    if scene.scale_bar:
        paint_scale_bar(painter, view, scene.theme, scene.unit)


def paint_loupe(
    painter: QPainter,
    scene: Scene,
    lens: Lens,
    shapes: Shapes,
    still: Callable[[QPainter, View], None] | None = None,
) -> None:
    """Paint the loupe; `still` may paint the still layers of its view from a cache."""

    def content(glass: QPainter, view: View) -> None:
        if still is None:
            paint_still(glass, scene, view, shapes, in_glass=True)
        else:
            still(glass, view)
        paint_leaf(glass, scene, view, shapes)

    paint_lens(painter, lens, scene.theme, content)
