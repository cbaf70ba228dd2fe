#!/usr/bin/python3
"""The command line as its user meets it: exit codes, one clear line on the standard error, JSON by its schema.

command_line_test.py PROGRAM TOP
"""
import json
import os
import subprocess
import sys
import tempfile
import unittest
from xml.etree import ElementTree

import jsonschema

PROGRAM, TOP = sys.argv[1], sys.argv[2]
SAMPLES = ["armchair", "side_chair", "bench", "table", "luggage_stand", "chart_cabinet"]


def run(*arguments, **kwargs):
    environment = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    return subprocess.run([PROGRAM, *arguments], capture_output=True, text=True, env=environment, timeout=120, **kwargs)


def sample(name):
    return os.path.join(TOP, "samples", name + ".shoulder")


def faulty(name):
    return os.path.join(TOP, "tests", "pieces", name + ".shoulder")


def schema(name):
    with open(os.path.join(TOP, "resources", "schema", name + ".schema.json"), encoding="utf-8") as file:
        return json.load(file)


class Help(unittest.TestCase):
    def test_help_and_version_need_no_display(self):
        self.assertEqual(run("--help").returncode, 0)
        self.assertIn("print", run("--help").stdout)
        self.assertRegex(run("--version").stdout, r"^shoulderline \d+\.\d+\.\d+\n$")

    def test_unknown_options_and_commands_are_refused_in_one_line(self):
        for arguments in (["check"], ["check", sample("table"), "--colour"], ["print", sample("table")], ["sizes", sample("table"), "--with", "depth"]):
            result = run(*arguments)
            self.assertEqual(result.returncode, 2, arguments)
            self.assertEqual(len(result.stderr.strip().splitlines()), 1, result.stderr)

    def test_window_without_a_display_says_so(self):
        result = run(sample("table"))
        self.assertEqual(result.returncode, 2)
        self.assertIn("no display", result.stderr)


class Check(unittest.TestCase):
    def test_samples_have_nothing_that_must_be_mended(self):
        for name in SAMPLES:
            self.assertEqual(run("check", sample(name)).returncode, 0, name)

    def test_faulty_pieces_exit_with_1_and_say_what(self):
        self.assertIn("overlap by", run("check", faulty("tenons_meet")).stdout)
        for name in ("tenons_meet", "thin_walls", "runs_through"):
            self.assertEqual(run("check", faulty(name)).returncode, 1, name)

    def test_json_is_as_its_schema_says(self):
        for path in [sample(n) for n in SAMPLES] + [faulty(n) for n in ("tenons_meet", "thin_walls", "runs_through")]:
            jsonschema.validate(json.loads(run("check", path, "--json").stdout), schema("findings"))

    def test_unreadable_files_exit_with_2_and_one_sentence(self):
        with tempfile.TemporaryDirectory() as folder:
            broken = os.path.join(folder, "broken.shoulder")
            with open(sample("table"), encoding="utf-8") as good, open(broken, "w", encoding="utf-8") as file:
                file.write(good.read()[:500])
            for path in (broken, folder, os.path.join(folder, "none.shoulder"), "/dev/null"):
                result = run("check", path)
                self.assertEqual(result.returncode, 2, path)
                self.assertEqual(len(result.stderr.strip().splitlines()), 1, result.stderr)
                self.assertEqual(result.stdout, "")


class Sizes(unittest.TestCase):
    def test_json_is_as_its_schema_says(self):
        for name in SAMPLES:
            document = json.loads(run("sizes", sample(name), "--json").stdout)
            jsonschema.validate(document, schema("sizes"))
            self.assertGreaterEqual(len(document["parts"]), 10)

    def test_armchair_has_at_least_sixty_parts_and_swings_at_three_stations(self):
        document = json.loads(run("sizes", sample("armchair"), "--json").stdout)
        self.assertGreaterEqual(len(document["parts"]), 60)
        self.assertEqual([p["name"] for p in document["swings"][0]["positions"]], ["upright", "reading", "resting"])
        self.assertEqual([s["quantity"] for s in document["small_parts"] if s["kind"] in ("pivot pin", "peg")], [2, 2])

    def test_screws_are_listed_with_what_they_hold(self):
        screws = json.loads(run("sizes", sample("armchair"), "--json").stdout)["screws"]
        cleat = next(s for s in screws if s["through"] == "front cleat")
        self.assertEqual((cleat["into"], cleat["gauge"], cleat["quantity"]), ("front rail", 10, 4))
        self.assertEqual(cleat["joints"], ["front cleat on front rail"])
        self.assertAlmostEqual(cleat["length_mm"], 1.5 * 25.4)
        for one in json.loads(run("sizes", sample("table"), "--json").stdout)["screws"]:
            self.assertNotIn("gauge", one, "the table is in millimetres")

    def test_with_states_a_measure_anew(self):
        def thickness(*more):
            document = json.loads(run("sizes", sample("armchair"), "--json", *more).stdout)
            return next(j for j in document["joints"] if j["name"] == "side rail, upper, left into front post, left")["tenon"]["thickness_mm"]

        self.assertAlmostEqual(thickness(), 5 / 16 * 25.4)
        self.assertAlmostEqual(thickness("--with", "rail thickness=1 1/8 in"), 3 / 8 * 25.4)
        self.assertAlmostEqual(thickness("--stock", "rail stock=1 1/8 in"), 3 / 8 * 25.4)

    def test_unknown_measures_stocks_and_expressions_are_refused(self):
        for option in (["--with", "keel=1 in"], ["--stock", "driftwood=1 in"], ["--with", "seat height=1 in +"]):
            self.assertEqual(run("sizes", sample("armchair"), *option).returncode, 2, option)

    def test_the_same_file_gives_the_same_bytes(self):
        self.assertEqual(run("sizes", sample("bench"), "--json").stdout, run("sizes", sample("bench"), "--json").stdout)


class Strength(unittest.TestCase):
    def test_json_is_as_its_schema_says(self):
        for path in [sample(n) for n in SAMPLES] + [faulty("thin_walls")]:
            jsonschema.validate(json.loads(run("strength", path, "--json").stdout), schema("strength"))

    def test_every_output_carries_the_caution(self):
        self.assertIn("no proof", run("strength", sample("armchair")).stdout)
        self.assertIn("no proof", json.loads(run("strength", sample("armchair"), "--json").stdout)["caution"])

    def test_joints_outside_the_tested_sizes_have_ranks_and_no_figures(self):
        for joint in json.loads(run("strength", sample("armchair"), "--json").stdout)["joints"]:
            if not joint["covered_by_tests"]:
                self.assertNotIn("bending_newton_metres", joint)
                self.assertNotIn("ratio", joint.get("worked", {}))
                self.assertGreaterEqual(joint["rank"], 1)


class Settle(unittest.TestCase):
    def test_json_is_as_its_schema_says(self):
        for name in SAMPLES:
            jsonschema.validate(json.loads(run("settle", sample(name), "--json").stdout), schema("settle"))

    def test_settled_piece_has_nothing_left_to_mend(self):
        thick = ["--with", "rail thickness=1 1/8 in"]
        self.assertEqual(run("check", sample("armchair"), *thick).returncode, 1)
        with tempfile.TemporaryDirectory() as folder:
            out = os.path.join(folder, "settled.shoulder")
            result = run("settle", sample("armchair"), *thick, "--out", out)
            self.assertEqual(result.returncode, 0, result.stderr)
            self.assertIn("no proof", result.stdout)
            self.assertEqual(run("check", out).returncode, 0, run("check", out).stdout)

    def test_a_file_that_cannot_be_written_is_told(self):
        self.assertEqual(run("settle", sample("table"), "--out", "/nowhere/at/all.shoulder").returncode, 4)


class Movement(unittest.TestCase):
    def test_json_is_as_its_schema_says(self):
        for name in SAMPLES:
            jsonschema.validate(json.loads(run("movement", sample(name), "--json").stdout), schema("movement"))

    def test_stated_air_counts(self):
        with open(sample("table"), encoding="utf-8") as file:
            piece = json.load(file)
        piece["climate"] = {"dry": {"moisture": "8"}, "damp": {"moisture": "8"}}
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "still.shoulder")
            with open(path, "w", encoding="utf-8") as file:
                json.dump(piece, file)
            for part in json.loads(run("movement", path, "--json").stdout)["parts"]:
                self.assertEqual(part["width_change_mm"], 0)


class Files(unittest.TestCase):
    def test_samples_and_faulty_pieces_are_as_the_schema_says(self):
        piece = schema("piece")
        jsonschema.Draft202012Validator.check_schema(piece)
        for folder in ("samples", os.path.join("tests", "pieces")):
            for name in sorted(os.listdir(os.path.join(TOP, folder))):
                with open(os.path.join(TOP, folder, name), encoding="utf-8") as file:
                    jsonschema.validate(json.load(file), piece)


class Print(unittest.TestCase):
    def test_parts_and_piece_come_out_as_pdf(self):
        with tempfile.TemporaryDirectory() as folder:
            for what, scale in (("parts", "1:1"), ("parts", "fit"), ("piece", "fit"), ("piece", "1:12"), ("piece", "1:1"), ("pictorial", "fit"), ("set", "fit"), ("rods", "1:1"), ("story", "1:1")):
                out = os.path.join(folder, "out.pdf")
                result = run("print", sample("side_chair"), "--what", what, "--paper", "A4", "--scale", scale, "--out", out)
                self.assertEqual(result.returncode, 0, result.stderr)
                with open(out, "rb") as file:
                    self.assertEqual(file.read(5), b"%PDF-")

    def test_svg_comes_out_one_file_for_each_page(self):
        with tempfile.TemporaryDirectory() as folder:
            result = run("print", sample("bench"), "--scale", "fit", "--out", os.path.join(folder, "parts.svg"))
            self.assertEqual(result.returncode, 0, result.stderr)
            names = sorted(os.listdir(folder))
            self.assertIn("parts-1.svg", names)
            self.assertNotIn("parts.svg", names)
            for name in names:
                root = ElementTree.parse(os.path.join(folder, name)).getroot()
                self.assertEqual(root.tag, "{http://www.w3.org/2000/svg}svg")
                # A4, lying or upright
                self.assertEqual({root.get("width"), root.get("height")}, {"297mm", "210mm"})
                styles = root.findall("{http://www.w3.org/2000/svg}style")
                self.assertEqual([style.text.count("@font-face{font-family:'Routed Gothic'") for style in styles], [1])
            run("print", sample("bench"), "--what", "piece", "--scale", "fit", "--out", os.path.join(folder, "whole.svg"))
            self.assertIn("whole.svg", os.listdir(folder))

    def test_the_same_piece_gives_the_same_bytes(self):
        with tempfile.TemporaryDirectory() as folder:
            for ending, options in (("pdf", []), ("svg", ["--what", "piece", "--scale", "fit"])):
                outs = [os.path.join(folder, name + "." + ending) for name in ("a", "b")]
                for out in outs:
                    run("print", sample("table"), *options, "--out", out)
                with open(outs[0], "rb") as first, open(outs[1], "rb") as second:
                    self.assertEqual(first.read(), second.read())

    def test_unknown_paper_or_scale_is_refused(self):
        for option in (["--paper", "A99"], ["--what", "carvings"], ["--scale", "big"], ["--scale", "0:1"], ["--paper", "0 x 0 mm"]):
            result = run("print", sample("table"), "--out", "out.pdf", *option)
            self.assertEqual(result.returncode, 2, option)
            self.assertEqual(len(result.stderr.strip().splitlines()), 1, result.stderr)

    def test_a_scale_too_large_for_the_paper_is_refused(self):
        with tempfile.TemporaryDirectory() as folder:
            out = os.path.join(folder, "out.pdf")
            result = run("print", sample("armchair"), "--what", "parts", "--paper", "A4", "--scale", "1:2", "--out", out)
            self.assertEqual(result.returncode, 2)
            self.assertIn("does not fit on A4 at 1:2", result.stderr)
            self.assertFalse(os.path.exists(out))

    def test_a_pdf_that_cannot_be_written_exits_with_4(self):
        result = run("print", sample("table"), "--out", "/no/such/folder/out.pdf")
        self.assertEqual(result.returncode, 4)
        self.assertIn("/no/such/folder/out.pdf", result.stderr)


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0]])
