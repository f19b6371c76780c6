"""Modules joined into one script: run once each, after those they import; what is not understood is refused."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from py_mini_racer import MiniRacer
from storymaths.publish.page_scripts import page_scripts, script_for
from storymaths.scripts.join import SCRIPTS, NotUnderstood, joined
from storymaths.scripts.run import run

COUNTER = "export const count = [];\n"


def join(folder: Path, modules: Mapping[str, str], entry: str = "entry.js") -> str:
    for name, text in modules.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return joined(entry, folder)


def value_of(script: str) -> object:
    with MiniRacer() as engine:
        return json.loads(str(engine.eval(f"JSON.stringify({script})")))


def test_each_module_runs_once_after_those_it_imports(tmp_path: Path) -> None:
    modules = {
        "counter.js": COUNTER,
        "one.js": 'import { count } from "./counter.js";\ncount.push("one");\nexport const one = count.length;\n',
        "deep/two.js": 'import { one } from "../one.js";\nimport { count } from "../counter.js";\ncount.push("two", one);\n',
        "entry.js": 'import "./deep/two.js";\nimport { one } from "./one.js";\nimport { count } from "./counter.js";\n'
        "export const result = { count, one };\n",
    }
    script = join(tmp_path, modules)
    assert value_of(script) == {"result": {"count": ["one", "two", 1], "one": 1}}
    assert script.count("count = [];") == 1
    assert joined("entry.js", tmp_path) == script, "the same modules give the same text"


def test_names_of_one_module_are_none_of_anothers(tmp_path: Path) -> None:
    modules = {
        "one.js": "const hidden = 1;\nexport function first() {\n  return hidden;\n}\nexport class Thing {}\n",
        "entry.js": 'import { first, Thing } from "./one.js";\nconst hidden = 2;\n'
        "export const both = [first(), hidden, typeof Thing];\n",
    }
    assert value_of(join(tmp_path, modules)) == {"both": [1, 2, "function"]}


def test_notes_and_types_are_left_out_and_words_are_not(tmp_path: Path) -> None:
    text = (
        "/* A note\n * import of nothing\n */\n// import another\n/** @type {string} */\n"
        'export const said = /** @type {string} */ ("/* kept */ // kept too"); // kept as well\n'
    )
    script = join(tmp_path, {"entry.js": text})
    assert value_of(script) == {"said": "/* kept */ // kept too"}
    assert "note" not in script
    assert "@type" not in script


def test_what_is_joined_is_strict_as_modules_are(tmp_path: Path) -> None:
    text = "export const isStrict = (function () {\n  return this === undefined;\n})();\n"
    assert value_of(join(tmp_path, {"entry.js": text})) == {"isStrict": True}


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ('import { a as b } from "./one.js";', "not of a form"),
        ('import whole from "./one.js";', "not of a form"),
        ('import * as whole from "./one.js";', "not of a form"),
        ('import { a } from "package";', "not of a form"),
        ('import { a } from "./one.js"', "not of a form"),
        ('  import { a } from "./one.js";', "not of a form"),
        ("export default 1;", "not of a form"),
        ("export let a = 1;", "not of a form"),
        ("export { a };", "not of a form"),
        ("export const { a } = {};", "not of a form"),
        ('export * from "./one.js";', "not of a form"),
        ('import { b } from "./one.js";', "one.js exports no b"),
        ('import { a } from "./two.js";', "there is no two.js"),
        ('import { a } from "../../outside.js";', "there is no outside.js"),
        ("const text = `one", "must end on the line"),
        ("const text = 'one\\", "must end on the line"),
        ("/* one */ const a = 1;", "nothing may follow"),
        ("/* one", "no end"),
    ],
)
def test_what_is_not_understood_is_refused_with_its_place(tmp_path: Path, line: str, why: str) -> None:
    with pytest.raises(NotUnderstood, match=rf"entry\.js, line 2: .*{re.escape(why)}"):
        join(tmp_path, {"one.js": "export const a = 1;\n", "entry.js": f"const first = 1;\n{line}\n"})


def test_modules_in_a_ring_are_refused(tmp_path: Path) -> None:
    modules = {"entry.js": 'import "./one.js";\n', "one.js": 'import "./entry.js";\n'}
    with pytest.raises(NotUnderstood, match=r"one\.js, line 1: entry\.js imports this module too, in a ring"):
        join(tmp_path, modules)


def test_every_kind_of_page_has_a_script_and_no_module_is_left_over() -> None:
    scripts = page_scripts()
    assert {script_for(path.stem) for path in (SCRIPTS / "pages").glob("*.js")} == set(scripts)
    assert script_for("list") == "look/every.js"
    asked = {"finder/whole.js", "weeks/whole.js", "shelf/sums.js", "live/reload.js"}  # by Python
    text = "".join(path.read_text("utf-8") for path in SCRIPTS.rglob("*.js"))
    for path in SCRIPTS.rglob("*.js"):
        name = path.relative_to(SCRIPTS).as_posix()
        assert name.startswith("pages/") or name in asked or f'/{path.name}"' in text, name


def test_scripts_are_read_in_one_go_and_say_what_they_are_for() -> None:
    for path in SCRIPTS.rglob("*.js"):
        text = path.read_text("utf-8")
        assert text.startswith("/*"), path
        assert text.count("\n") <= 300, path


def test_a_function_is_run_with_what_it_is_given() -> None:
    assert run("weeks/dates.js", "iso", 20864) == '"2027-02-15"'
    assert json.loads(run("weeks/calendar.js", "textOf", "a;b\u2028\n🚢")) == "a\\;b\u2028\\n🚢"
