"""Opens a workbook in LibreOffice with links allowed, recalculates it, and prints what its cells show as JSON.

usage: recalculate.py WORKBOOK FOLDER_FOR_THE_PROFILE LOCALE [PDF]

Each sheet becomes an object from address to [text, number]; a cell without a number has null in its place.
"""

import json
import os
import pathlib
import subprocess
import sys
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

workbook, folder, locale = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve(), sys.argv[3]
profile = folder / "profile"
(profile / "user").mkdir(parents=True)
(profile / "user" / "registrymodifications.xcu").write_text(
    f"""<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Common/Security/Scripting"><prop oor:name="SecureURL" oor:op="fuse"><value><it>{workbook.parent.as_uri()}</it></value></prop></item>
<item oor:path="/org.openoffice.Office.Calc/Content/Update"><prop oor:name="Link" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>{locale}</value></prop></item>
</oor:items>
""",
    encoding="utf-8",
)


def setting(name, value):
    return PropertyValue(Name=name, Value=value)


pipe = f"gustworthy{os.getpid()}"
office = subprocess.Popen(
    [
        "soffice",
        "--headless",
        "--norestore",
        "--nologo",
        "--nodefault",
        f"-env:UserInstallation={profile.as_uri()}",
        f"--accept=pipe,name={pipe};urp;",
    ],
    stdout=subprocess.DEVNULL,
    stderr=subprocess.DEVNULL,
    start_new_session=True,
)
try:
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    for attempt in range(240):
        try:
            context = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            break
        except NoConnectException:
            if office.poll() is not None:
                sys.exit(f"LibreOffice ended with {office.returncode} before it listened")
            time.sleep(0.25)
    else:
        sys.exit("LibreOffice does not listen")
    desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    document = desktop.loadComponentFromURL(
        workbook.as_uri(),
        "_blank",
        0,
        (setting("Hidden", True), setting("UpdateDocMode", 3), setting("MacroExecutionMode", 0)),
    )
    document.calculateAll()
    shown = {}
    for sheet in document.Sheets:
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        cells = shown[sheet.Name] = {}
        for row in range(cursor.RangeAddress.EndRow + 1):
            for column in range(cursor.RangeAddress.EndColumn + 1):
                cell = sheet.getCellByPosition(column, row)
                text = cell.getString()
                if text == "":
                    continue
                address = cell.AbsoluteName.split(".")[-1].replace("$", "")
                is_number = cell.Type.value == "VALUE" or (
                    cell.Type.value == "FORMULA" and cell.FormulaResultType2 == 1 and cell.getError() == 0
                )
                cells[address] = [text, cell.getValue() if is_number else None]
    if len(sys.argv) > 4:
        document.storeToURL(pathlib.Path(sys.argv[4]).resolve().as_uri(), (setting("FilterName", "calc_pdf_Export"),))
    document.close(True)
    print(json.dumps(shown))
    try:
        desktop.terminate()
        office.wait(20)
    except Exception:
        pass
finally:
    if office.poll() is None:
        os.killpg(office.pid, 9)
