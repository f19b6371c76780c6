"""Words that made-up books are made of: places, names, things, doings. None calls for a caution."""

from __future__ import annotations

_HEADS = (
    "Alder Amber Ash Barley Bay Beacon Birch Bracken Briar Brindle Cinder Clover Copper Coral Dapple Dusk Eider Elm "
    "Ember Fallow Fern Finch Flax Frost Gable Garnet Hazel Heath Heron Hollow Ivy Jasper Juniper Kestrel Larch Linnet "
    "Maple Marl Meadow Mill Mistle Moss Nettle Oak Otter Pebble Plover Quarry Rowan Sable Sedge Sorrel Tansy Teal "
    "Thistle Umber Wren Yarrow"
).split()
_TAILS = (
    "Bank Barn Bend Bridge Brook Close Common Corner Court Cove Croft Cross Dale Dock Down Edge End Farm Field Ford Gate "
    "Green Grove Hall Harbour Haven Hill Holt Isle Landing Lane Lea Mead Mere Point Quay Ridge Rise Row Side Steps "
    "Stile Street Tower View Wharf Wood Yard"
).split()
_STARTS = (
    "Al Ba Be Bri Ca Cor Da Del Em Fa Fen Gar Hal Ise Jo Ka Ker Lo Mar Nel Ob Pim Quin Ro Sa Tam Ul Ver Wil Yas".split()
)
_ENDS = "bek dan dle eth fin gan ick kin la lin mo na nel pip ra rin sa ta vey win wyn zo".split()

THINGS = (
    "apples badges barrels baskets bells boats bricks brushes buckets bundles cabbages caps carts coats cogs crates "
    "crowns cushions drums feathers fences flags flutes gates gloves hats hoops jars keys kites ladders lamps leaves "
    "letters loaves maps medals mittens mugs nests nets oars onions paddles parcels pears pegs pillows planks plums pots "
    "puppets rugs sacks sails scarves seeds shawls sleighs slippers socks spades stalls stamps stools tents tickets tiles "
    "toys trays trumpets tubs turnips umbrellas vases waggons wheels whistles windows"
).split()
DOINGS = (
    "Arrange Balance Build Check Choose Collect Compare Count Deliver Divide Double Draw Empty Fill Find Gather Halve "
    "Join Label Load Lower Match Measure Mend Move Order Pack Pair Place Plan Raise Record Share Sort Split Stack "
    "Store Swap Trade Unpack Weigh"
).split()
MOODS = (
    "busy calm careful cheerful clever cold curious dusty early eager fair foggy friendly gentle golden hidden kind late "
    "lively lonely long loud muddy narrow old patient proud quick quiet rainy restless shy silver slow small snowy steady "
    "stormy stubborn sunny tall tidy tired topsy-turvy warm wide windy"
).split()
FOLK = (
    "baker beekeeper boatbuilder bookbinder carpenter clockmaker cobbler doctor driver engineer farmer "
    "fisher florist gardener hatter lamplighter librarian mapmaker miller musician nurse painter pilot porter potter "
    "printer sailor shepherd signaller tailor teacher thatcher tinker toymaker weaver"
).split()


def place(number: int) -> str:
    """A place name; each number below 2,900 gives another."""
    return f"{_HEADS[number % len(_HEADS)]} {_TAILS[(number // len(_HEADS) + number) % len(_TAILS)]}"


def name(number: int) -> str:
    """A name for somebody."""
    return _STARTS[number % len(_STARTS)] + _ENDS[(number // len(_STARTS) + number) % len(_ENDS)]
