"""Reads an exported data package with nothing but Python's standard library and prints what it found as JSON.

Every file must have the size and the SHA-256 that datapackage.json states; every table must have the columns its
schema states, in that order. Usage: python3 read_package.py PACKAGE.zip
"""
import csv
import hashlib
import io
import json
import sys
import zipfile

with zipfile.ZipFile(sys.argv[1]) as archive:
    damaged = archive.testzip()
    descriptor = json.loads(archive.read("datapackage.json").decode("utf-8"))
    faults = [damaged] if damaged else []
    tables = {}
    for resource in descriptor["resources"]:
        data = archive.read(resource["path"])
        if len(data) != resource["bytes"]:
            faults.append(resource["path"] + ": size")
        if "sha256:" + hashlib.sha256(data).hexdigest() != resource["hash"]:
            faults.append(resource["path"] + ": hash")
        if "schema" in resource:
            rows = list(csv.reader(io.StringIO(data.decode("utf-8"), newline="")))
            if rows[0] != [field["name"] for field in resource["schema"]["fields"]]:
                faults.append(resource["path"] + ": columns")
            tables[resource["name"]] = [dict(zip(rows[0], row)) for row in rows[1:]]
    listed = {resource["path"] for resource in descriptor["resources"]} | {"datapackage.json"}
    faults += sorted(listed ^ set(archive.namelist()))

json.dump({"faults": faults, "tables": tables}, sys.stdout)
