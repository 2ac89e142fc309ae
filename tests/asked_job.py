"""An invented washer that is asked about from the first question to the last: what is typed."""

from __future__ import annotations

ASKED = {  # words of a question of the job -> what is typed
    "What kind of machine": "washing machine",
    "What is wrong": "does not turn",
    "Which machine": "washer, 120 V (invented)",
    "On which day": "2026-01-27",
    "How is it connected": "1",
    "1 lead (as found)": "3",
    "ground path is needed": "1",
    "one is needed": "leakage",
    "test jumpers are off": "1",
    "safety switches are proved": "yes",
    "covers and bonding": "yes",
    "leads are clear": "yes",
    "the cause of an opened": "none had opened",
    "What was done": "belt put back",
}
READINGS = {  # input -> what is typed; nothing for the rest
    "wire": "18 AWG",
    "style": "closed",
    "barrel_length": "6.4",
    "nameplate_voltage": "120 V",
    "voltage_running": "117.2 V ±(1%+3)",
    "outlet_kind": "120-grounded",
    "line_neutral": "118.0 V ±(1%+3)",
    "line_ground": "117.9 V ±(1%+3)",
    "neutral_ground": "0.10 V ±(1%+3)",
    "ground_proof": "low-impedance",
    "ground_point": "plug-pin",
    "ground_resistance": "0.062 ohm ±(1%+2)",
    "leakage_current": "0.21 mA ±(2%+2)",
    "machine_kind": "stationary",
    "switched_on": "yes",
}


def reply(shown: str) -> str:
    """Say what is typed at a prompt, by what was shown since the last."""
    prompt = shown.rsplit("\n", 1)[-1]
    name = prompt.removesuffix("> ").split(" ")[0]
    said = " ".join(shown.split())
    if not name:
        return next((typed for words, typed in ASKED.items() if words in said), "")
    if "Enter ends the list" in prompt or "Enter takes it" in said:
        return ""
    return READINGS.get(name, "")
