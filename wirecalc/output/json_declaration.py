"""The declaration of a calculation as one JSON object ("wirecalc.calculation/1")."""

from __future__ import annotations

from typing import Any

from ..engine.declaration import Calculation


def declaration_object(calc: Calculation[Any]) -> dict[str, Any]:
    """Return what a calculation declares, with the JSON schema of its inputs."""
    properties = {}
    for declared in calc.inputs:
        schema: dict[str, Any] = {"anyOf": [declared.kind.schema, {"const": "unknown"}]}
        if declared.many:
            schema = {
                "anyOf": [
                    {"type": "array", "items": declared.kind.schema, "minItems": 1},
                    *schema["anyOf"],
                ]
            }
        if declared.assumed:
            schema["default"] = declared.assumed
        if declared.words:
            schema["left_out"] = declared.need
        properties[declared.name] = schema
    return {
        "schema": "wirecalc.calculation/1",
        "name": calc.name,
        "part": calc.part,
        "question": calc.question,
        "words": list(calc.words),
        "text": calc.doc,
        "example": calc.example,
        "inputs": {
            "type": "object",
            "properties": properties,
            "required": [i.name for i in calc.inputs if i.required],
            "additionalProperties": False,
        },
        "output": "wirecalc.finding/1",
        "cautions": list(calc.cautions),
        "not_checked": list(calc.not_checked),
    }
