"""Every drawing drawn: which module draws which figure."""

from __future__ import annotations

from typing import assert_never

from ...model.figures import FigureData, amounts, cases, charts, fractions, measures, shapes, sorting
from . import (
    angle_fan,
    array,
    balance,
    bar_chart,
    block_diagram,
    bond_stairs,
    case_grid,
    case_strip,
    clock_face,
    clock_jumps,
    coins,
    coordinate_grid,
    flat_shapes,
    fraction_bar,
    fraction_line,
    fraction_shape,
    grid_route,
    laid_pieces,
    line_graph,
    measure_scale,
    mirror_squares,
    part_whole,
    pictogram,
    pie_chart,
    places,
    sided_shape,
    solid_shapes,
    sort_carroll,
    sort_hoop,
    sort_three_rings,
    sort_venn,
    squared_shape,
    sum_bars,
    tally_chart,
    towers,
    track,
    two_bars,
    weighing,
)


def draw(figure: FigureData) -> str:
    """The figure as SVG, which the words beside it describe."""
    match figure:
        case amounts.Array():
            return array.draw(figure)
        case amounts.BondStairs():
            return bond_stairs.draw(figure)
        case amounts.PartWhole():
            return part_whole.draw(figure)
        case amounts.SumBars():
            return sum_bars.draw(figure)
        case amounts.Towers():
            return towers.draw(figure)
        case amounts.Track():
            return track.draw(figure)
        case amounts.TwoBars():
            return two_bars.draw(figure)
        case cases.CaseGrid():
            return case_grid.draw(figure)
        case cases.CaseStrip():
            return case_strip.draw(figure)
        case charts.BarChart():
            return bar_chart.draw(figure)
        case charts.BlockDiagram():
            return block_diagram.draw(figure)
        case charts.LineGraph():
            return line_graph.draw(figure)
        case charts.PieChart():
            return pie_chart.draw(figure)
        case charts.Pictogram():
            return pictogram.draw(figure)
        case charts.TallyChart():
            return tally_chart.draw(figure)
        case fractions.FractionBar():
            return fraction_bar.draw(figure)
        case fractions.FractionLine():
            return fraction_line.draw(figure)
        case fractions.ShapeInParts():
            return fraction_shape.draw(figure)
        case measures.Balance():
            return balance.draw(figure)
        case measures.ClockFace():
            return clock_face.draw(figure)
        case measures.ClockJumps():
            return clock_jumps.draw(figure)
        case measures.Coins():
            return coins.draw(figure)
        case measures.MeasureScale():
            return measure_scale.draw(figure)
        case measures.Weighing():
            return weighing.draw(figure)
        case shapes.AngleFan():
            return angle_fan.draw(figure)
        case shapes.CoordinateGrid():
            return coordinate_grid.draw(figure)
        case shapes.FlatShapes():
            return flat_shapes.draw(figure)
        case shapes.GridRoute():
            return grid_route.draw(figure)
        case shapes.LaidPieces():
            return laid_pieces.draw(figure)
        case shapes.MirrorSquares():
            return mirror_squares.draw(figure)
        case shapes.SidedShape():
            return sided_shape.draw(figure)
        case shapes.SquaredShape():
            return squared_shape.draw(figure)
        case shapes.SolidShapes():
            return solid_shapes.draw(figure)
        case sorting.Places():
            return places.draw(figure)
        case sorting.SortCarroll():
            return sort_carroll.draw(figure)
        case sorting.SortHoop():
            return sort_hoop.draw(figure)
        case sorting.SortThreeRings():
            return sort_three_rings.draw(figure)
        case sorting.SortVenn():
            return sort_venn.draw(figure)
    assert_never(figure)
