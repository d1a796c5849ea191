"""A screen of its own for one program: X server, window manager, session bus, accessibility."""

import os
import pathlib
import signal
import subprocess
import time

PATIENCE = 30  # seconds before something that does not happen counts as failed


def wait_until(what, happened, patience=PATIENCE):
    """Waits for a condition and returns its value; fails with words when it never holds."""
    end = time.monotonic() + patience
    while True:
        try:
            value = happened()
        except Exception:  # a control may go while it is looked at
            value = None
        if value:
            return value
        if time.monotonic() > end:
            raise AssertionError(f"waited in vain until {what}")
        time.sleep(0.1)


class Stage:
    """Use as a context; everything that was started ends with it."""

    def __init__(self, scratch, pictures, size="1366x768", theme="Adwaita", text_scale=1):
        self.scratch = scratch
        self.pictures = pictures
        self.config = scratch / "home" / ".config"
        self.size = size
        self.theme = theme
        self.text_scale = text_scale
        self.started = []
        self.program = None

    def __enter__(self):
        self.pictures.mkdir(parents=True, exist_ok=True)
        self.config.mkdir(parents=True, exist_ok=True)
        reader, writer = os.pipe()
        self._start(["Xvfb", "-displayfd", str(writer), "-screen", "0", f"{self.size}x24"],
                    pass_fds=[writer])
        os.close(writer)
        display = ":" + os.read(reader, 20).decode().strip()
        os.environ.update(DISPLAY=display, HOME=str(self.scratch / "home"), GDK_BACKEND="x11",
                          XDG_CONFIG_HOME=str(self.config), LC_ALL="C.UTF-8",
                          XDG_RUNTIME_DIR=str(self.scratch), GTK_THEME=self.theme,
                          GDK_DPI_SCALE=str(self.text_scale),
                          GSETTINGS_BACKEND="memory", GTK_MODULES="gail:atk-bridge")
        for name in ("NO_AT_BRIDGE", "WAYLAND_DISPLAY"):
            os.environ.pop(name, None)
        bus = subprocess.Popen(["dbus-daemon", "--session", "--nofork", "--print-address=1"],
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        self.started.append(bus)
        os.environ["DBUS_SESSION_BUS_ADDRESS"] = bus.stdout.readline().strip()
        self._start(["openbox"])
        return self

    def __exit__(self, failure, *_):
        if failure:
            self.picture("failure")
            print(self.output())
        if self.program and self.program.poll() is None:
            self.program.kill()
        for process in reversed(self.started):
            process.send_signal(signal.SIGTERM)
            process.wait()

    def _start(self, command, **options):
        self.started.append(subprocess.Popen(command, stdout=subprocess.DEVNULL,
                                             stderr=subprocess.DEVNULL, **options))

    def open(self, command):
        # Not at the top: it connects to the session bus, which has only now been started.
        import pyatspi
        self.atspi = pyatspi
        self.log = open(self.scratch / "output.txt", "w+")
        self.program = subprocess.Popen(command, stdout=self.log, stderr=self.log, cwd=self.scratch)

    def output(self):
        return pathlib.Path(self.log.name).read_text()

    def ended(self):
        return self.program.wait(timeout=PATIENCE)

    def picture(self, name):
        subprocess.run(["import", "-window", "root", self.pictures / f"{name}.png"], check=False)

    def fill_screen(self):
        wide, high = self.size.split("x")
        subprocess.run(["xdotool", "getactivewindow", "windowsize", wide, high, "windowmove", "0",
                        "0"], check=True)

    def press(self, key):
        subprocess.run(["xdotool", "key", "--clearmodifiers", key], check=True)

    def type(self, text):
        subprocess.run(["xdotool", "type", "--delay", "20", text], check=True)

    def _controls(self):
        for application in self.atspi.Registry.getDesktop(0):
            if application and application.name == "sparewell":
                yield from walk(application)

    def find(self, role, name, whole=False):
        """A control on the screen with this role, or any, whose name begins so, or is just that."""
        for control in self._controls():
            fits = control.name == name if whole else control.name.startswith(name)
            if fits and role in ("", control.getRoleName()):
                if control.getState().contains(self.atspi.STATE_SHOWING):
                    return control
        return None

    def wait_for(self, role, name):
        return wait_until(f"there is a {role} named {name}", lambda: self.find(role, name))

    def can_be_used(self, role, name):
        control = self.find(role, name, whole=True)
        return control if control and control.getState().contains(
            self.atspi.STATE_SENSITIVE) else None

    def click(self, role, name):
        """With the mouse: an action asked for over the bus would hold the bus while a dialog is open."""
        control = wait_until(f"the {role} {name} can be used",
                             lambda: self.can_be_used(role, name))
        self.click_at(control)

    def click_at(self, control):
        box = self.settled_box(control)
        subprocess.run(["xdotool", "mousemove", str(box.x + box.width // 2),
                        str(box.y + box.height // 2), "click", "1"], check=True)

    def settled_box(self, control):
        """Where a control stands, once the window manager has put its window into place."""
        seen = []

        def settled():
            box = control.queryComponent().getExtents(self.atspi.DESKTOP_COORDS)
            seen.append((box.x, box.y, box.width, box.height))
            same = len(seen) > 5 and len(set(seen[-5:])) == 1
            return box if same and box.x > 0 and box.y > 0 else None

        return wait_until("a control stands still", settled)

    def set_text(self, name, text):
        self.wait_for("text", name).queryEditableText().setTextContents(text)

    @staticmethod
    def rows(table):
        return table.queryTable().nRows

    @staticmethod
    def cell(table, row, column):
        return table.queryTable().getAccessibleAt(row, column).name

    def focused(self, control):
        return control.getState().contains(self.atspi.STATE_FOCUSED)


def walk(control):
    """Everything inside a control; not into tables, whose cells can be many."""
    yield control
    if control.getRoleName() in ("table", "tree table"):
        return
    for child in control:
        if child:
            yield from walk(child)


def save_as(stage, path):
    """The toolkit's own dialog for a file to write or to read."""
    stage.press("ctrl+a")
    stage.type(str(path))
    stage.press("Return")
    end = time.monotonic() + 3
    while stage.find("file chooser", "") and time.monotonic() < end:
        time.sleep(0.1)
    # On a busy machine the first one may only have taken a completion over.
    if stage.find("file chooser", ""):
        stage.press("Return")
