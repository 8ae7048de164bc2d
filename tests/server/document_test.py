"""The document: revisions, the working copy that outlives a kill, saving without destroying, two tabs."""
import http.client
import os
import pathlib
import shutil
import signal
import stat
import tempfile
import threading
import unittest

from running import Server, files_of, program, site_of, text_of

EXAMPLE = "01-gravity-dam"


class Documents(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(self.enterContext(tempfile.TemporaryDirectory()))
        self.state = self.folder / "state"
        self.site = self.folder / "site.toml"
        shutil.copy(site_of(EXAMPLE), self.site)
        shutil.copy(site_of(EXAMPLE).parent / "tailwater.csv", self.folder)
        self.text = text_of(EXAMPLE)

    def serve(self, *arguments):
        return self.enterContext(Server(*arguments, state=self.state))

    def edit(self, server, text, files=None, revision=None):
        if revision is None:
            revision = server.get("document")[1]["revision"]
        return server.post("document", {"revision": revision, "text": text, "files": files or {}})

    def test_a_site_file_is_opened_with_its_files(self):
        _, document = self.serve(self.site).get("document")
        self.assertEqual(document["path"], str(self.site))
        self.assertEqual(document["text"], self.text)
        self.assertEqual(document["files"], files_of(EXAMPLE))
        self.assertEqual(document["revision"], document["saved_revision"])
        self.assertFalse(document["recovered"])
        self.assertEqual(document["other_tabs"], 0)

    def test_a_missing_site_file_is_bad_input(self):
        done = program("serve", "--no-open", str(self.folder / "none.toml"))
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("no such file", done.stderr)

    def test_examples_open_with_their_files(self):
        server = self.serve()
        status, document = server.post("document/open", {"example": "05-gated-dam"})
        self.assertEqual((status, document["path"], document["text"]), (200, None, text_of("05-gated-dam")))
        self.assertEqual(document["files"], files_of("05-gated-dam"))
        self.assertEqual(server.post("document/open", {"example": "../05-gated-dam"})[0], 404)

    def test_new_document(self):
        _, document = self.serve().post("document/open", {"new": True})
        self.assertEqual((document["path"], document["text"]), (None, 'units = "SI"\n'))

    def test_open_asks_for_one_thing(self):
        server = self.serve()
        for body in ({}, {"new": False}, {"new": True, "example": EXAMPLE}, {"path": 7}, {"recover": True}, {"path": ""},
                     {"path": "/etc/passwd"}, {"path": str(self.folder / "none.toml")}, {"path": "a\0.toml"}):
            self.assertIn(server.post("document/open", body)[0], (400, 409), body)
        self.assertEqual(server.get("document")[0], 200)

    def test_two_tabs_and_a_conflict(self):
        server = self.serve(self.site)
        self.assertEqual(server.post("tab", {"id": "one"})[1]["other_tabs"], 0)
        self.assertEqual(server.post("tab", {"id": "two"})[1]["other_tabs"], 1)
        self.assertEqual(server.get("document?tab=one")[1]["other_tabs"], 1)
        start = server.get("document")[1]["revision"]
        status, answer = self.edit(server, "# first\n", revision=start)
        self.assertEqual((status, answer["revision"]), (200, start + 1))
        status, conflict = self.edit(server, "# second\n", revision=start)
        self.assertEqual((status, conflict["text"], conflict["revision"]), (409, "# first\n", start + 1))
        self.assertIn("error", conflict)
        self.assertEqual(self.edit(server, "# second\n", revision=start + 1)[0], 200)
        self.assertEqual(server.post("tab", {"id": "two", "closed": True})[1]["other_tabs"], 1)
        self.assertEqual(server.post("tab", {"id": "one"})[1]["other_tabs"], 0)

    def test_an_edit_does_not_touch_the_users_file(self):
        server = self.serve(self.site)
        self.edit(server, "# edited\n", {"tailwater.csv": "other"})
        self.assertEqual(self.site.read_text(encoding="utf-8"), self.text)
        document = server.get("document")[1]
        self.assertEqual(document["files"]["tailwater.csv"], "other")
        self.assertNotEqual(document["revision"], document["saved_revision"])

    def test_a_killed_server_offers_its_working_copy(self):
        for arguments in ([self.site], []):
            with Server(*arguments, state=self.state) as server:
                self.edit(server, "# typed\n", {"more.csv": "1,2\n"})
                server.end(signal.SIGKILL)
            with Server(*arguments, state=self.state) as server:
                document = server.get("document")[1]
                self.assertTrue(document["recovered"])
                self.assertEqual((document["text"], document["files"]["more.csv"]), ("# typed\n", "1,2\n"))
                self.assertNotEqual(document["revision"], document["saved_revision"])
                status, document = server.post("document/open", {"recover": True})
                self.assertEqual((status, document["recovered"], document["text"]), (200, False, "# typed\n"))
            with Server(*arguments, state=self.state) as server:  # ended in peace, but still never saved
                self.assertTrue(server.get("document")[1]["recovered"])
                document = server.post("document/open", {"recover": False})[1]
                self.assertEqual(document["text"], self.text if arguments else 'units = "SI"\n')
                self.assertEqual(document["revision"], document["saved_revision"])
            with Server(*arguments, state=self.state) as server:
                self.assertFalse(server.get("document")[1]["recovered"])

    def test_a_kill_at_any_moment_loses_nothing_that_was_answered_for(self):
        for round_number in range(6):
            with Server(self.site, state=self.state) as server:
                killer = threading.Timer(0.03 + 0.02 * round_number, server.process.kill)
                answered, sent, revision = 0, 0, server.get("document")[1]["revision"]
                try:
                    while True:
                        sent += 1
                        status, answer = self.edit(server, f"# {round_number} {sent}\n" + "#" * 100_000, revision=revision)
                        self.assertEqual(status, 200)
                        answered, revision = sent, answer["revision"]
                        if answered == 1:
                            killer.start()
                except (OSError, http.client.HTTPException):
                    pass
                killer.join()
                server.process.wait()
            with Server(self.site, state=self.state) as server:
                document = server.get("document")[1]
                self.assertTrue(document["recovered"])
                self.assertIn(document["text"].splitlines()[0], (f"# {round_number} {answered}", f"# {round_number} {sent}"))
                self.assertEqual(len(document["text"].splitlines()[1]), 100_000)
                server.post("document/open", {"recover": False})

    def test_where_no_working_copy_can_be_kept_nothing_is_served(self):
        done = program("serve", "--no-open", XDG_STATE_HOME="/proc/none")
        self.assertEqual((done.returncode, done.stdout), (3, ""))
        self.assertIn("/proc/none/quell", done.stderr)
        done = program("serve", "--no-open", XDG_STATE_HOME=None, HOME=None)
        self.assertEqual((done.returncode, done.stdout), (3, ""))
        self.assertIn("XDG_STATE_HOME", done.stderr)

    def test_what_was_saved_is_not_offered(self):
        with Server(self.site, state=self.state) as server:
            self.edit(server, "# typed\n")
            self.assertEqual(server.post("document/save", {})[0], 200)
            server.end(signal.SIGKILL)
        with Server(self.site, state=self.state) as server:
            document = server.get("document")[1]
            self.assertEqual((document["recovered"], document["text"]), (False, "# typed\n"))

    def test_another_server_does_not_take_a_copy_in_use(self):
        one = self.serve(self.site)
        self.edit(one, "# one\n")
        two = self.serve(self.site)
        document = two.get("document")[1]
        self.assertEqual((document["recovered"], document["text"]), (False, self.text))
        self.edit(two, "# two\n")
        self.assertEqual(one.get("document")[1]["text"], "# one\n")

    def test_opening_another_document_keeps_the_unsaved_one(self):
        server = self.serve(self.site)
        self.edit(server, "# typed\n")
        server.post("document/open", {"example": EXAMPLE})
        document = server.post("document/open", {"path": str(self.site)})[1]
        self.assertEqual((document["recovered"], document["text"]), (True, "# typed\n"))

    def test_the_working_copy_is_the_users_alone(self):
        self.edit(self.serve(self.site), "# typed\n")
        self.assertEqual(stat.S_IMODE(os.stat(self.state / "quell").st_mode), 0o700)

    def test_a_torn_working_copy_is_left_alone(self):
        with Server(self.site, state=self.state) as server:
            self.edit(server, "# typed\n")
            server.end(signal.SIGKILL)
        [copy] = (self.state / "quell").glob("*.json")
        copy.write_bytes(copy.read_bytes()[:20])
        server = self.serve(self.site)
        self.assertEqual(server.get("document")[1]["text"], self.text)
        self.assertEqual(self.edit(server, "# again\n")[0], 200)
        self.assertEqual(len(copy.read_bytes()), 20)

    def test_save_keeps_bytes(self):
        text = "\ufeff# Höhe · m³/s\r\n\tunits='SI'   \n\n\n# \U0001f30a no newline at the end"
        server = self.serve(self.site)
        self.edit(server, text)
        os.chmod(self.site, 0o640)
        status, answer = server.post("document/save", {})
        self.assertEqual((status, answer["path"]), (200, str(self.site)))
        self.assertEqual(self.site.read_bytes(), text.encode())
        self.assertEqual(stat.S_IMODE(self.site.stat().st_mode), 0o640)
        document = server.get("document")[1]
        self.assertEqual((document["saved_revision"], document["text"]), (document["revision"], text))

    def test_save_writes_the_files_that_the_text_names(self):
        server = self.serve(self.site)
        self.edit(server, self.text + "# more\n", {"tailwater.csv": "1\r\n", "unused.csv": "2"})
        server.post("document/save", {})
        self.assertEqual((self.folder / "tailwater.csv").read_bytes(), b"1\r\n")
        self.assertFalse((self.folder / "unused.csv").exists())

    def test_save_does_not_overwrite_what_changed_on_disk(self):
        for name in ("site.toml", "tailwater.csv"):
            with Server(self.site, state=self.state) as server:
                self.edit(server, self.text + f"# {name}\n", {"tailwater.csv": f"# {name}"})
                (self.folder / name).write_text("somebody else's", encoding="utf-8")
                status, answer = server.post("document/save", {})
                self.assertEqual(status, 409)
                self.assertIn(str(self.folder / name), answer["error"])
                self.assertEqual((self.folder / name).read_text(encoding="utf-8"), "somebody else's")
                self.assertEqual(server.post("document/save", {"overwrite": True})[0], 200)
                self.assertNotEqual((self.folder / name).read_text(encoding="utf-8"), "somebody else's")
                self.site.write_text(self.text, encoding="utf-8")

    def test_save_elsewhere(self):
        server = self.serve(self.site)
        (self.folder / "sub").mkdir()
        self.edit(server, self.text + "# moved\n")
        for path in (self.folder / "none" / "site.toml", self.folder / "site.txt", self.folder / ".bashrc", "a\0b.toml"):
            self.assertEqual(server.post("document/save", {"path": str(path)})[0], 400, path)
        target = self.folder / "sub" / "other.toml"
        status, answer = server.post("document/save", {"path": str(target)})
        self.assertEqual((status, answer["path"]), (200, str(target)))
        self.assertEqual(target.read_text(encoding="utf-8"), self.text + "# moved\n")
        self.assertEqual((self.folder / "sub" / "tailwater.csv").read_text(encoding="utf-8"), files_of(EXAMPLE)["tailwater.csv"])
        self.assertEqual(self.site.read_text(encoding="utf-8"), self.text)
        self.edit(server, "# again\n")
        self.assertEqual(server.post("document/save", {"path": str(self.site)})[0], 409)
        self.assertEqual(self.site.read_text(encoding="utf-8"), self.text)

    def test_a_document_without_path_asks_for_one(self):
        server = self.serve()
        self.assertEqual(server.post("document/save", {})[0], 400)

    def test_files_stay_beside_the_site(self):
        server = self.serve(self.site)
        (self.folder.parent / "quell-outside.csv").write_text("discharge (m3/s), level (m)\n1,2\n3,4\n", encoding="utf-8")
        self.addCleanup((self.folder.parent / "quell-outside.csv").unlink)
        for name in ("../quell-outside.csv", "/etc/passwd", ".hidden.csv", "sub/../../x.csv", "a\0.csv", "", "a\\b.csv", "sub/"):
            self.assertEqual(self.edit(server, self.text, {name: "1"})[0], 400, name)
        text = self.text.replace('"tailwater.csv"', '"../quell-outside.csv"')
        self.assertNotEqual(text, self.text)
        _, answer = server.post("design", {"text": text})
        self.assertIn("beside the site file", answer["problems"][0]["message"])
        self.assertEqual(self.edit(server, self.text, {"sub/deep.csv": "1"})[0], 200)

    def test_a_site_that_is_not_text_is_told(self):
        self.site.write_bytes(b"units = 'SI' # \xe9\n")
        done = program("serve", "--no-open", str(self.site))
        self.assertEqual(done.returncode, 2)
        self.assertIn("UTF-8", done.stderr)

    def test_a_document_too_large(self):
        server = self.serve()
        self.assertEqual(self.edit(server, "#" * 5_000_000)[0], 200)
        self.assertEqual(self.edit(server, "#" * 5_000_000, {"a.csv": "#" * 3_000_000})[0], 200)
        self.assertEqual(self.edit(server, "#" * 5_000_000, {"b.csv": "#" * 1_000_000})[0], 413)
        self.assertNotIn("b.csv", server.get("document")[1]["files"])
        self.assertEqual(self.edit(server, "#", {"a.csv": None})[0], 200)
        self.assertEqual(server.get("document")[1]["files"], {})
