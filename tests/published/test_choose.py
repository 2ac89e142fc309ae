"""Choosing from stock: the same verdicts as `splice`, ranked; a shop's own list."""

import types

import pytest

import wirecalc
from wirecalc import tables
from wirecalc.testing import plugin_set

from .records import independent, practice, source

HEAD = "part,connector,barrel,tab_in,listed_for,wire_limit,temperature_C,voltage_V\n"
COOL = {"place_temperature": "60 C", "wire_temperature": "105 C"}


def choose(tmp_path, rows, **given):
    path = tmp_path / "stock.csv"
    path.write_text(HEAD + rows)
    return wirecalc.run("choose", stock=str(path), **(COOL | given))


def listed(finding):
    return [(row[0], row[2]) for row in finding.listings[0].rows]


ROWS = (
    "small,push-on,22-18 AWG,0.250,stranded,1,105,300\n"
    "right,push-on,16-14 AWG,0.250,stranded,1,105,300\n"
    "hot,push-on,16-14 AWG,0.250,stranded,1,250,300\n"
    "tab,push-on,16-14 AWG,0.187,stranded,1,105,300\n"
    "ring,ring,16-14 AWG,,stranded,1,105,300\n"
)
PLACE = {"wire": ["14 AWG"], "connector": "push-on", "tab_width": "0.250 in"} | COOL


@independent(
    "14 AWG, 4107 cmil by ASTM B258's law, lies between 16 and 14 AWG and above 22 to 18 AWG"
)
@practice("the barrel names the wires that it takes, and the tab its width")
def test_fitting_parts_come_first_and_rejected_ones_say_why(tmp_path):
    finding = choose(tmp_path, ROWS, **PLACE, circuit_voltage="120 V")
    assert finding.verdict == "pass"
    assert listed(finding) == [
        ("hot", "pass"),
        ("right", "pass"),
        ("small", "fail"),
        ("tab", "fail"),
    ]
    why = {row[0]: row[3] for row in finding.listings[0].rows}
    assert "thicker than the 22-18 AWG barrel" in why["small"]
    assert "0.187 in tab" in why["tab"]


@practice("20 K between the place and the rating")
@independent("200 + 20 = 220 C: 105 C is under it, 250 C over it")
def test_a_hot_place_leaves_the_part_that_is_rated_for_it(tmp_path):
    hot = {"place_temperature": "200 C", "wire_temperature": "250 C"}
    finding = choose(tmp_path, ROWS, **PLACE | hot)
    assert [a.text for a in finding.answers] == ["hot"]


AREAS = (  # of the classes 509 alone was seen in print
    "small,closed-end,509-3260 cmil,,either,4,105,600\n"
    "middle,closed-end,2050-5180 cmil,,either,4,105,600\n"
    "large,closed-end,5180-13100 cmil,,either,4,105,600\n"
)


@source(
    "A component maker's guide to circular mils",
    "undated",
    "worked sum: 1600 + 2426 cmil; classes by the sum",
    seen="two copies, the classes recalled",
)
@source(
    "NASA-STD-8739.4",
    "Change 6",
    "19.11: the sum of the circular mils chooses the barrel",
    seen="one copy",
)
@source("Magnet-wire splice sheets", "undated", "sum of the circular mils", seen="one copy")
@pytest.mark.parametrize(
    ("wires", "part"),
    [
        # worked in the guide: 18 AWG of 16 strands of 10 mil and 16 AWG of 19 strands of 11.3 mil
        # are 1600 + 2426 = 4026 cmil: within 2050-5180 alone
        (["16x10 mil", "19x11.3 mil"], "middle"),
        # NASA: 642 + 1020 = 1662 cmil
        (["642 cmil", "1020 cmil"], "small"),
        # splice sheets: 6400 + 4000 = 10400 cmil
        (["64x10 mil", "40x10 mil"], "large"),
    ],
)
def test_the_part_that_a_worked_sum_of_circular_mils_asks_for(tmp_path, wires, part):
    finding = choose(tmp_path, AREAS, wire=wires, connector="closed-end")
    assert [a.text for a in finding.answers if a.name == "best part"] == [part]
    assert finding.verdict == "pass"
    assert [verdict for name, verdict in listed(finding) if name != part] == ["fail", "fail"]


@independent("law of the gauge, 25 x 92^(26/19.5) = 10383 cmil of 10 AWG")
def test_nothing_fits_says_what_to_buy_by_its_properties(tmp_path):
    finding = choose(tmp_path, ROWS, wire=["10 AWG"], connector="push-on", circuit_voltage="240 V")
    assert finding.verdict == "fail"
    assert "10383 cmil" in finding.answers[0].text
    assert "marked 240 V or more" in finding.answers[0].text


@practice("what a part does not say of itself is not counted on")
def test_a_part_that_cannot_be_told_is_no_pass(tmp_path):
    rows = "unmarked,push-on,16-14 AWG,0.250,stranded,1,,\n"
    finding = choose(tmp_path, rows, **PLACE, circuit_voltage="120 V")
    assert finding.verdict == "cannot tell"


@independent(
    "2.5 mm2 is 4934 cmil, between 14 AWG, 4107, and 13 AWG, 5178 cmil, by ASTM B258's law"
)
@practice("one gauge beyond what the barrel names is advised against")
def test_a_part_that_is_marginal_is_no_pass(tmp_path):
    finding = choose(tmp_path, ROWS, wire=["2.5 mm2"], connector="ring")
    assert finding.verdict == "marginal"


@practice("a row that cannot be read says nothing of the others")
def test_a_bad_row_has_its_reason_and_the_rest_goes_on(tmp_path):
    rows = "bad,push-on,14-16 AWG,0.250,stranded,1,105,300\n" + ROWS
    finding = choose(tmp_path, rows, **PLACE)
    why = {row[0]: row[3] for row in finding.listings[0].rows}
    assert "its row cannot be read" in why["bad"]
    assert finding.verdict == "pass"


@practice("no part of an invented list can be taken off a shelf")
def test_without_a_stock_the_invented_one_is_used_and_named():
    finding = wirecalc.run("choose", **PLACE)
    assert finding.criterion("something in stock fits").criterion.source.confidence == "demo"
    assert finding.verdict == "cannot tell"


@independent(
    "14 AWG, 4107 cmil by ASTM B258's law, lies between 16 and 14 AWG and above 22 to 18 AWG"
)
@practice("the shop's own list counts")
def test_a_shop_s_own_table_comes_before_the_invented_one(tmp_path):
    demo = tables.bundled_folder() / "stock-demo.toml"
    (tmp_path / "stock.toml").write_text(demo.read_text())
    demo_rows = (tables.bundled_folder() / "stock-demo.csv").read_text().splitlines()
    own = "shop-1,push-on,16-14 AWG,0.250,stranded,1,105,300,4,demo,demo,0,"
    (tmp_path / "stock.csv").write_text("\n".join([demo_rows[0], own]) + "\n")
    shop = types.SimpleNamespace(wirecalc_tables=wirecalc.hookimpl(lambda: [tmp_path]))
    with plugin_set(shop):
        assert [a.text for a in wirecalc.run("choose", **PLACE).answers] == ["shop-1"]


@independent("200 parts less the 15 that are shown are 185")
@pytest.mark.parametrize("rows", [3, 200])
def test_long_lists_are_cut_and_counted(tmp_path, rows):
    many = "".join(f"p{i},ring,16-14 AWG,,stranded,1,105,300\n" for i in range(rows))
    (shown,) = choose(tmp_path, many, wire=["14 AWG"], connector="ring").listings
    assert len(shown.rows) == min(rows, 15)
    assert ("185 more" in shown.title) == (rows == 200)


@practice("what a part does not say of itself is not counted on")
@independent(
    "14 AWG, 4107 cmil by ASTM B258's law, lies between 16 and 14 AWG and above 22 to 18 AWG"
)
@pytest.mark.parametrize(
    ("row", "verdict"),
    [
        ("16-14 AWG,,stranded,1,105,300", "cannot tell"),  # its tab is not known
        # what cannot be read says nothing, neither for a part nor against it
        ("16-14 AWG,0.250,stranded,inf,105,300", "cannot tell"),
        ("16-14 AWG,0.250,stranded,2.9,105,300", "cannot tell"),
        ("16-14 AWG,0.250,stranded,1,nan,300", "cannot tell"),
        ("16-14 AWG,0.250,stranded,1,105,300", "pass"),
    ],
)
def test_what_a_row_does_not_say_or_says_wrongly_is_no_pass(tmp_path, row, verdict):
    assert choose(tmp_path, f"one,push-on,{row}\n", **PLACE).verdict == verdict


@practice("what is used up cannot be fitted")
def test_a_part_that_is_used_up_is_not_offered(tmp_path):
    path = tmp_path / "stock.csv"
    path.write_text(
        "part,connector,barrel,tab_in,listed_for,wire_limit,temperature_C,on_hand\n"
        "gone,push-on,16-14 AWG,0.250,stranded,1,105,0\n"
    )
    finding = wirecalc.run("choose", **PLACE, stock=str(path))
    assert finding.verdict == "fail"
    assert "none is left" in finding.listings[0].rows[0][3]


@practice("a list that does not say which wire a part takes chooses nothing")
def test_a_list_without_its_columns_is_refused_and_not_judged(tmp_path):
    path = tmp_path / "stock.csv"
    path.write_text("name,connector,range\nx,push-on,16-14 AWG\n")
    with pytest.raises(wirecalc.BadInput, match="no column part, barrel"):
        wirecalc.run("choose", **PLACE, stock=str(path))


COUNTED = "part,connector,barrel,tab_in,listed_for,wire_limit,temperature_C,on_hand\n"
FITS = "push-on,16-14 AWG,0.250,stranded,1,105"
SMALL = "push-on,22-18 AWG,0.250,stranded,1,105"


def counted(tmp_path, *rows, **given):
    path = tmp_path / "stock.csv"
    path.write_text(COUNTED + "\n".join(rows) + "\n")
    return wirecalc.run("choose", **(PLACE | given), stock=str(path))


@practice("what a part does not say of itself is not counted on")
@independent(
    "14 AWG, 4107 cmil by ASTM B258's law, lies between 16 and 14 AWG and above 22 to 18 AWG"
)
def test_a_row_that_cannot_be_read_is_no_fail_and_speaks_to_people(tmp_path):
    finding = counted(tmp_path, f"bad,{FITS},five", f"small,{SMALL},9")
    assert listed(finding) == [("bad", "cannot tell"), ("small", "fail")]
    assert "'five' is no number; write it in digits" in finding.listings[0].rows[0][3]
    judged = finding.criterion("something in stock fits")
    assert judged.verdict == "cannot tell"
    assert "1 of 2 push-on parts cannot be read" in judged.reason
    assert counted(tmp_path, f"bad,{FITS},five", f"good,{FITS},9").verdict == "pass"


@practice("a count that is not written is looked up on the shelf")
def test_an_unknown_count_is_not_told_and_a_list_without_counts_is_not_checked(tmp_path):
    assert counted(tmp_path, f"one,{FITS},").verdict == "cannot tell"
    assert counted(tmp_path, f"one,{FITS},", f"two,{FITS},1").answers[0].text == "two"
    finding = choose(tmp_path, ROWS, **PLACE)
    assert "how many are left" in {n.what for n in finding.not_checked}


@practice("two rows of one number are one part: the counts add, different barrels contradict")
@pytest.mark.parametrize(
    ("rows", "verdict", "on_hand"),
    [
        ((f"one,{FITS},3", f"one,{FITS},2"), "pass", "3 + 2 (2 rows)"),
        ((f"one,{FITS},0", f"one,{FITS},2"), "pass", "0 + 2 (2 rows)"),
        ((f"one,{FITS},0", f"one,{FITS},"), "cannot tell", "0 + ? (2 rows)"),
        ((f"one,{FITS},3", f"one,{SMALL},2"), "cannot tell", "3 + 2 (2 rows)"),
    ],
)
def test_a_part_number_that_stands_twice_is_noticed(tmp_path, rows, verdict, on_hand):
    finding = counted(tmp_path, *rows)
    assert finding.verdict == verdict
    (row,) = finding.listings[0].rows
    assert (row[0], row[1]) == ("one", on_hand)


@practice("the shop's list is the one ground of the choice")
def test_whatever_it_says_the_criterion_has_one_origin(tmp_path):
    rows = (f"good,{FITS},1", f"small,{SMALL},1")
    origins = {
        counted(tmp_path, row).criterion("something in stock fits").criterion.origin for row in rows
    }
    assert len(origins) == 1


@practice("a list without the kind of part offers nothing")
def test_no_part_of_the_kind_has_no_empty_table(tmp_path):
    finding = counted(tmp_path, f"one,{FITS},3", connector="butt", tab_width=None)
    assert finding.listings == ()
    assert "the list has no butt part" in finding.criterion("something in stock fits").reason


@practice("a shop keeps its list as a CSV file")
def test_the_file_of_the_stock_is_explained_in_whole_words(tmp_path):
    (given,) = [i for i in choose(tmp_path, ROWS, **PLACE).inputs if i.name == "stock"]
    assert given.notes == ()
    kind = wirecalc.build(bundled_only=True).calculations["choose"].calculation.input("stock").kind
    assert kind.span == "a CSV file"
