"""What each drawing shows, as data: one class a drawing, which ``render/figures`` knows how to draw.

``NAME`` is what a drawing is called outside the program: the class of its SVG is ``figure-`` and that name.
"""

from __future__ import annotations

from .amounts import Array, BondStairs, PartWhole, SumBars, Towers, Track, TwoBars
from .cases import CaseGrid, CaseStrip
from .charts import BarChart, BlockDiagram, LineGraph, Pictogram, PieChart, TallyChart
from .fractions import FractionBar, FractionLine, ShapeInParts
from .measures import Balance, ClockFace, ClockJumps, Coins, MeasureScale, Weighing
from .shapes import (
    AngleFan,
    CoordinateGrid,
    FlatShapes,
    GridRoute,
    LaidPieces,
    MirrorSquares,
    SidedShape,
    SolidShapes,
    SquaredShape,
)
from .sorting import Places, SortCarroll, SortHoop, SortThreeRings, SortVenn

FigureData = (
    AngleFan
    | Array
    | Balance
    | BarChart
    | BlockDiagram
    | BondStairs
    | CaseGrid
    | CaseStrip
    | ClockFace
    | ClockJumps
    | Coins
    | CoordinateGrid
    | FlatShapes
    | FractionBar
    | FractionLine
    | ShapeInParts
    | GridRoute
    | LaidPieces
    | LineGraph
    | MeasureScale
    | MirrorSquares
    | PartWhole
    | Pictogram
    | PieChart
    | Places
    | SidedShape
    | SolidShapes
    | SortCarroll
    | SortHoop
    | SortThreeRings
    | SortVenn
    | SquaredShape
    | SumBars
    | TallyChart
    | Towers
    | Track
    | TwoBars
    | Weighing
)
"""Every drawing there is."""
