"""Every address of the server, against the command line where it does the same."""
import gzip
import json
import re
import unittest
import xml.etree.ElementTree

import running
from running import Server, files_of, on_page, program, site_of, text_of

EXAMPLE = "01-gravity-dam"
SENTENCES = {"title", "text", "advice", "statement", "remark", "choice_reason", "approach", "failure_modes", "model_required_for", "withheld"}


def cases_of(option):
    """The cases of an option of the page, each with its names."""
    return [dict(zip(option["cases"]["names"], row)) for row in option["cases"]["rows"]]


def without_sentences(value):
    """The page has the engine's sentences as the report prints them; the command line, in SI."""
    if isinstance(value, dict):
        return {key: without_sentences(one) for key, one in value.items() if key not in SENTENCES}
    return [without_sentences(one) for one in value] if isinstance(value, list) else value


def in_nine_digits(value):
    """The page has numbers to nine significant digits; the command line, all of them. Python's own rounding is the measure."""
    if isinstance(value, dict):
        return {key: in_nine_digits(one) for key, one in value.items()}
    if isinstance(value, list):
        return [in_nine_digits(one) for one in value]
    return float(f"{value:.9g}") if isinstance(value, float) else value


class Answers(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.server = cls.enterClassContext(Server())

    def test_health_is_the_version_of_the_program(self):
        status, answer = self.server.get("health")
        self.assertEqual(status, 200)
        self.assertEqual("quell " + answer["version"], program("--version").stdout.strip())

    def page(self):
        status, headers, body = self.server.ask("GET", "", headers={"Accept-Encoding": "gzip, deflate, br"})
        self.assertEqual(headers["Content-Type"], "text/html; charset=utf-8")
        self.assertEqual(headers["Cache-Control"], "no-store")
        self.assertEqual(headers.get("Content-Encoding"), "gzip" if status == 200 else None)
        return status, gzip.decompress(body) if status == 200 else body

    def test_page_is_there_or_says_how_to_build_it(self):
        status, page = self.page()
        is_built = (running.ROOT / "web" / "dist" / "index.html").exists()
        self.assertEqual(status, 200 if is_built else 503)
        self.assertIn(b"<html" if is_built else b"npm run build", page)

    def test_files_of_the_page_are_those_of_the_build(self):
        built = running.ROOT / "web" / "dist"
        if not built.exists():
            self.skipTest("web/dist was not built")
        for path in built.rglob("*"):
            if not path.is_file():
                continue
            name = path.relative_to(built).as_posix()
            status, headers, body = self.server.ask("GET", name, headers={"Accept-Encoding": "gzip"})
            self.assertEqual((status, headers["Content-Encoding"]), (200, "gzip"))
            self.assertEqual("immutable" in headers["Cache-Control"], name.startswith("assets/"))
            self.assertEqual(gzip.decompress(body), path.read_bytes(), name)
            status, headers, body = self.server.ask("GET", name, headers={"Accept-Encoding": "identity"})
            self.assertEqual((status, headers.get("Content-Encoding"), body), (200, None, path.read_bytes()))

    def test_every_answer_carries_the_safe_headers(self):
        for name in ("", "health", "nothing-here"):
            _, headers, _ = self.server.ask("GET", name)
            self.assertTrue(headers["Content-Security-Policy"].startswith("default-src 'self'"))
            self.assertEqual(headers["X-Content-Type-Options"], "nosniff")
            self.assertEqual(headers["Referrer-Policy"], "no-referrer")

    def test_the_address_without_its_slash_leads_to_the_page(self):
        status, headers, _ = self.server.ask("GET", None, path=f"/{self.server.token}")
        self.assertEqual((status, headers["Location"]), (308, f"/{self.server.token}/"))

    def test_examples_are_those_of_the_folder(self):
        status, examples = self.server.get("examples")
        self.assertEqual(status, 200)
        folders = sorted(path.name for path in (running.ROOT / "examples").iterdir() if path.is_dir())
        self.assertEqual([one["id"] for one in examples], folders)
        for one in examples:
            readme = (running.ROOT / "examples" / one["id"] / "README.md").read_text(encoding="utf-8")
            self.assertEqual("# " + one["title"], readme.splitlines()[0])
            self.assertIn(one["summary"].split(" What it shows")[0], readme)

    def test_form_of_a_good_site(self):
        status, answer = self.server.post("design", on_page(EXAMPLE, form=True))
        self.assertEqual((status, answer["problems"]), (200, []))
        lines = text_of(EXAMPLE).splitlines()
        typed = [one for one in answer["inputs"] if not one["is_default"]]
        self.assertGreater(len(typed), 10)
        for one in typed:
            self.assertGreater(one["line"], 0)
            self.assertIn(one["key"], "\n".join(lines[max(0, one["line"] - 12):one["line"]]))
        self.assertTrue(all(one["line"] == 0 for one in answer["inputs"] if one["is_default"]))

    def test_design_tells_problems_with_place_and_key(self):
        text = text_of(EXAMPLE).replace("design_head", "design_haed")
        line = next(i for i, words in enumerate(text.splitlines(), 1) if words.startswith("design_haed"))
        _, answer = self.server.post("design", {"text": text, "files": files_of(EXAMPLE)})
        found = [p for p in answer["problems"] if p["key"] == "crest.design_haed"]
        self.assertEqual([(p["file"], p["line"]) for p in found], [("site.toml", line)])
        self.assertIn("design_head", found[0]["message"] + found[0]["hint"])

    def test_design_reads_files_from_the_page(self):
        files = {"tailwater.csv": files_of(EXAMPLE)["tailwater.csv"] + "1,2\n"}
        _, answer = self.server.post("design", {"text": text_of(EXAMPLE), "files": files})
        self.assertEqual({p["file"] for p in answer["problems"]}, {"tailwater.csv"})
        _, answer = self.server.post("design", {"text": text_of(EXAMPLE), "files": {}})
        self.assertEqual([p["key"] for p in answer["problems"]], ["river.rating.file"])

    def test_design_is_that_of_the_command_line(self):
        for example in ("01-gravity-dam", "02-small-dam", "05-gated-dam"):
            status, answer = self.server.post("design", on_page(example))
            self.assertEqual((status, answer["problems"], answer["reason"]), (200, [], None))
            self.assertEqual(answer["units"], "US" if example == "02-small-dam" else "SI")
            self.assertGreater(answer["engine_ms"], 0)
            expected = json.loads(program("design", str(site_of(example)), "--json").stdout)
            for both in (answer["result"], expected):
                del both["input"]["path"]
            del expected["input"]["keys"]
            for option in expected["options"]:
                del option["safety"]
            for option in answer["result"]["options"]:
                option["cases"] = cases_of(option)
            levels = answer["result"].pop("levels")
            self.assertEqual(levels["check_flood"], in_nine_digits(max(case["discharge"] for case in expected["cases"] if not case["gate_pattern"])))
            self.assertNotEqual(answer["result"]["options"], expected["options"])
            self.assertIn(" ft" if answer["units"] == "US" else " m", answer["result"]["options"][0]["statement"].replace("\u202f", " "))
            self.assertEqual(without_sentences(answer["result"]), in_nine_digits(without_sentences(expected)))

    def test_design_with_the_moving_water(self):
        for example in (EXAMPLE, "05-gated-dam"):
            _, answer = self.server.post("design", on_page(example, type="type_2", profiles=True))
            option = answer["result"]["options"][0]
            low = [case for case in cases_of(option) if case["tailwater_case"] == "low" and not case["gate_pattern"]]
            water = option["water"]
            self.assertEqual([one["discharge"] for one in water["discharges"]], [case["discharge"] for case in low])
            for one, case, site in zip(water["discharges"], low, answer["result"]["cases"]):
                bed, level, _, surface, energy = one["chute"][-1]
                self.assertAlmostEqual(bed, option["chute_end_station"], places=2)
                self.assertAlmostEqual(level, option["apron_level"], places=2)
                self.assertGreater(surface, level)
                self.assertAlmostEqual(energy, option["apron_level"] + case["energy_head"], delta=0.15 * case["energy_head"])
                self.assertEqual([row[4] for row in one["chute"]], sorted((row[4] for row in one["chute"]), reverse=True))
                self.assertLessEqual(one["chute"][0][4], site["reservoir_level"] + 0.01)
                self.assertEqual(one["jump"]["low"], sorted(one["jump"]["low"]))
                self.assertAlmostEqual(one["jump"]["low"][-1], case["available_depth"], delta=0.1 * case["available_depth"])
            _, without = self.server.post("design", on_page(example, type="type_2"))
            self.assertNotIn("water", without["result"]["options"][0])

    def test_schema_has_what_a_site_names(self):
        status, schema = self.server.get("schema")
        self.assertEqual(status, 200)
        known = {(section["name"], key["name"]) for section in schema["sections"] for key in section["keys"]}
        _, answer = self.server.post("design", on_page(EXAMPLE, form=True))
        for one in answer["inputs"]:
            self.assertIn((re.sub(r"\[\d+\]", "", one["section"]), one["key"]), known)

    def test_edit_changes_what_was_asked_and_nothing_else(self):
        text = text_of(EXAMPLE)
        _, answer = self.server.post("design", {"text": text, "edits": [{"path": "crest.level", "value": '"131 m"'}]})
        self.assertEqual(answer["text"], text.replace('level = "132.0 m"', 'level = "131 m"', 1))
        _, answer = self.server.post("design", {"text": text, "edits": [{"path": "basin.lowest_apron", "remove": True}]})
        self.assertEqual(answer["text"], text.replace('lowest_apron = "90.0 m"\n', "", 1))
        edits = [{"insert_table": "crest"}, {"path": "crest.piers", "value": "2"}]
        _, answer = self.server.post("design", {"text": "", "edits": edits})
        self.assertEqual(answer["text"].strip(), "[crest]\npiers = 2")
        self.assertIsNone(answer["result"])
        self.assertNotIn("text", self.server.post("design", {"text": text})[1])

    def test_design_with_edits_is_that_of_the_text_after_them(self):
        body = on_page(EXAMPLE, type="type_2", form=True)
        _, edited = self.server.post("design", {**body, "edits": [{"path": "crest.level", "value": '"131 m"'}]})
        _, straight = self.server.post("design", {**body, "text": edited["text"]})
        for one in (edited, straight):
            del one["engine_ms"]
        del edited["text"]
        self.assertEqual(edited, straight)
        self.assertEqual(edited["result"]["levels"]["crest"], 131.0)

    def test_edit_that_cannot_be_made(self):
        edits = [{"path": "crest.level", "value": '"131 m'}]
        _, answer = self.server.post("design", {"text": text_of(EXAMPLE), "edits": edits})
        self.assertEqual(list(answer), ["refused"])
        self.assertTrue(answer["refused"][0]["message"])
        for edits in ("crest", {}, ["crest"], [{"value": "1"}], [{"path": "crest.level"}], [{"path": 1, "value": "1"}]):
            self.assertEqual(self.server.post("design", {"text": "", "edits": edits})[0], 400, edits)

    def test_units_are_the_factors_of_the_engine(self):
        status, units = self.server.get("units")
        self.assertEqual(status, 200)
        # The international foot and cubic foot, exact by definition.
        self.assertAlmostEqual(units["US"]["m"]["factor"], 1 / 0.3048, places=12)
        self.assertAlmostEqual(units["US"]["m3/s"]["factor"], 1 / 0.3048**3, places=10)
        self.assertEqual((units["US"]["m"]["label"], units["SI"]["m3/s"]["label"]), ("ft", "m³/s"))
        self.assertEqual({one["factor"] for unit, one in units["SI"].items() if unit in ("m", "m2", "m3/s")}, {1.0})

    def test_design_of_some_types_only(self):
        for asked, expected in (({"types": ["type_1"]}, ["type_1"]), ({"type": "type_2"}, ["type_2"]), ({"types": []}, []),
                                ({"types": ["type_2", "type_1"]}, ["type_2", "type_1"])):
            _, answer = self.server.post("design", on_page(EXAMPLE, **asked))
            self.assertEqual([option["type"] for option in answer["result"]["options"]], expected)
        self.assertEqual(self.server.post("design", on_page(EXAMPLE, types=["type_99"]))[0], 400)
        self.assertEqual(self.server.post("design", on_page(EXAMPLE, types="type_1"))[0], 400)

    def test_design_with_the_apron_held(self):
        _, free = self.server.post("design", on_page(EXAMPLE, type="type_2"))
        option = free["result"]["options"][0]
        margin = option["governing"]["margin"]
        for shift in (-2.0, 1.0):
            level = option["apron_level"] + shift
            _, answer = self.server.post("design", on_page(EXAMPLE, type="type_2", apron_level=level))
            held = answer["result"]["options"][0]
            self.assertAlmostEqual(held["apron_level"], level, places=6)
            self.assertEqual(held["governing"]["margin"] > margin, shift < 0)  # a lower apron gains tailwater
        for example, level in ((EXAMPLE, 95.0), ("05-gated-dam", 203.0)):
            text = "\n".join(line for line in text_of(example).splitlines() if not line.startswith(("highest_apron", "lowest_apron")))
            fixed = text.replace("[basin]", f"[basin]\nhighest_apron = {level}\nlowest_apron = {level}")
            self.assertNotEqual(fixed, text)
            _, by_text = self.server.post("design", {"text": fixed, "files": files_of(example)})
            _, by_hand = self.server.post("design", {"text": text, "files": files_of(example), "apron_level": level})
            self.assertEqual([p["message"] for p in by_text["problems"]], [])
            self.assertEqual(by_hand["result"]["options"], by_text["result"]["options"])
        self.assertEqual(self.server.post("design", on_page(EXAMPLE, apron_level="low"))[0], 400)

    def test_design_with_the_end_of_the_basin_held(self):
        text = text_of(EXAMPLE)
        by_text = self.server.post("design", on_page(EXAMPLE, type="type_2", text=text.replace("[basin]", "[basin]\nlength = 40")))[1]
        by_hand = self.server.post("design", on_page(EXAMPLE, type="type_2", length=40))[1]
        self.assertEqual(by_hand["result"]["options"], by_text["result"]["options"])
        option = by_hand["result"]["options"][0]
        self.assertEqual(option["length"], 40)
        self.assertGreater(option["required_length"], 40)
        finding = next(f for f in option["findings"] if f["id"] == "basin.length")
        self.assertEqual((finding["status"], finding["value"]), ("fails", 40))
        for wrong in (0.1, -3, 1e9, "long"):
            self.assertEqual(self.server.post("design", on_page(EXAMPLE, length=wrong))[0], 400)

    def test_what_is_remembered_of_a_site_does_not_outlive_a_change(self):
        def discharges(body):
            return [case["discharge"] for case in self.server.post("design", body)[1]["result"]["cases"]]

        site = on_page("05-gated-dam")
        first = discharges(site)
        self.assertEqual(discharges(on_page("05-gated-dam", apron_level=203)), first)
        inflow = site["files"]["check-inflow.csv"].splitlines()
        peak = max(range(2, len(inflow)), key=lambda i: float(inflow[i].split(",")[1]) if inflow[i][:1].isdigit() else 0)
        time, flow = inflow[peak].split(",")[:2]
        inflow[peak] = f"{time},{float(flow) * 1.02}"
        changed = {**site, "files": {**site["files"], "check-inflow.csv": "\n".join(inflow) + "\n"}}
        self.assertNotEqual(discharges(changed), first)
        self.assertEqual(discharges(site), first)

    def test_design_of_a_site_with_problems(self):
        status, answer = self.server.post("design", {"text": "units = \"SI\"\n"})
        self.assertEqual((status, answer["result"], answer["reason"]), (200, None, None))
        self.assertTrue(answer["problems"])

    def test_design_without_physical_answer_gives_the_reason(self):
        _, answer = self.server.post("design", on_page(EXAMPLE, apron_level=9000))
        self.assertIsNone(answer["result"])
        self.assertTrue(answer["reason"])
        for level in (9001, 1e300, -1e300):
            self.assertEqual(self.server.post("design", on_page(EXAMPLE, apron_level=level))[0], 400)

    def test_working_is_well_formed_mathml(self):
        status, answer = self.server.post("working", on_page(EXAMPLE, type="type_1", section=None))
        self.assertEqual(status, 200)
        self.assertGreater(len(answer["sections"]), 1)
        tree = xml.etree.ElementTree.fromstring(f"<div>{answer['html']}</div>")
        self.assertTrue(list(tree.iter("math")))
        self.assertEqual(len(list(tree.iter("h3"))), len(answer["sections"]))
        there = {element.get("id") for element in tree.iter("div")}
        self.assertGreater(len(answer["steps"]), 30)
        for finding, step in answer["steps"].items():
            self.assertIn(f"step-{step}", there, finding)
        links = {element.get("href") for element in tree.iter("a") if element.get("class") == "from"}
        self.assertIn("#input-crest.design_head", links)
        self.assertTrue(any(link.startswith("#step-") and link[1:] in there for link in links))
        _, second = self.server.post("working", on_page(EXAMPLE, type="type_1", section=2))
        self.assertTrue(second["html"].startswith("<h3>2  "))
        self.assertIn(second["html"].strip(), answer["html"])

    def test_report_and_package_are_the_files_of_the_command_line(self):
        _, report = self.server.post("report", on_page(EXAMPLE))
        self.assertEqual([(f["name"], f["media"]) for f in report["files"]], [("report.html", "text/html")])
        _, package = self.server.post("package", on_page(EXAMPLE))
        files = {f["name"]: f for f in package["files"]}
        self.assertEqual(files["report.html"]["text"], report["files"][0]["text"])
        self.assertIn("result.json", files)
        self.assertEqual(files["long-section.svg"]["media"], "image/svg+xml")
        xml.etree.ElementTree.fromstring(files["long-section.svg"]["text"])
        self.assertEqual(self.server.post("report", {"text": ""})[0], 409)

    def test_the_report_is_read_with_its_style_and_without_script(self):
        self.assertEqual(self.server.ask("GET", "report.html")[0], 409, "an empty document has no report")
        with Server(site_of(EXAMPLE)) as server:
            status, headers, body = server.ask("GET", "report.html")
            _, report = server.post("report", {"text": server.get("document")[1]["text"]})
        self.assertEqual(status, 200)
        self.assertTrue(headers["Content-Type"].startswith("text/html"))
        policy = headers["Content-Security-Policy"]
        self.assertIn("default-src 'none'", policy)
        self.assertIn("style-src 'unsafe-inline'", policy)
        self.assertNotIn("script-src", policy)
        self.assertEqual(body.decode(), report["files"][0]["text"])

    def test_wrong_kinds_in_a_body(self):
        for body in ({}, {"text": 5}, {"text": None}, {"text": "", "files": []}, {"text": "", "files": {"a.csv": 1}}):
            for name in ("design", "working", "report"):
                self.assertEqual(self.server.post(name, body)[0], 400, (name, body))

    def test_methods_that_an_address_does_not_take(self):
        for method, name, allow in (("POST", "health", "GET"), ("GET", "design", "POST"), ("PUT", "document", "GET, POST"),
                                    ("DELETE", "document", "GET, POST"), ("HEAD", "health", "GET"), ("POST", "", "GET")):
            status, headers, _ = self.server.ask(method, name, {} if method == "POST" else None)
            self.assertEqual((status, headers["Allow"]), (405, allow), (method, name))
        self.assertEqual(self.server.post("nothing", {})[0], 404)
