"""A clinic of one step that uses every member a step can have; its digest is in DEVELOPERS.md."""

GOLDEN_FILES = {
    "content/handbook.yaml": """\
handbook: stone-ford
title: Stone Ford handbook
edition: 2026.1
issued: 2026-03-01
review_by: 2027-03-01
language: en
responsible: nurse in charge
clinic:
  altitude: 900 m
  vessels:
    - {vessel: tall, kind: gravity steam}
""",
    "content/figures/all.yaml": """\
figures:
  bath.hold: {is: hold, value: 20 min, basis: from memory}
  bath.longest: {is: longest, value: 1 h, basis: from memory}
  bath.strength: {is: strength, value: 0.5 % available chlorine, basis: from memory}
  bath.warmth: {is: warmth, value: 25 °C, basis: from memory}
  wet.wait: {is: wait, value: 2 h, basis: from memory}
  settle.wait: {is: wait, value: 30 s, basis: from memory}
""",
    "content/equipment.yaml": """\
equipment:
  basin: {name: basin}
  clock: {name: clock}
  tongs: {name: tongs}
""",
    "content/agents/chlorine.yaml": """\
agent: chlorine
name: Chlorine
family: chlorine
wear: [eye protection, apron]
""",
    "content/routes/bath.yaml": """\
route: bath
name: Bath
level: high-level disinfection
kind: chemical
""",
    "content/instruments/cup.yaml": """\
instrument: cup
name: Cup
label: several patients
parts:
  - {part: rim, count: 1, touches: [mucous membrane]}
  - {part: foot, count: 1, touches: [never the patient]}
take_apart: [rim, foot]
""",
    "content/procedures/cup-bath.yaml": """\
procedure: cup-bath
instrument: cup
route: bath
vessel: tall
stages:
  - stage: disinfection
    steps:
      - step: put-under
        action: expose
        do: >-
          Put  it under for {{ bath.hold }}, that is {{ bath.hold in hours }};
          cafe\u0301 spoons stay out.
        wall: Under for {{ bath.hold }}.
        why: A late part has had less.
        safety: yes
        wear: [heavy gloves, apron]
        danger: {kind: corrosive, say: Keep your face away.}
        hold:
          figure: bath.hold
          from: the last part is under
          if_interrupted: Start again.
          no_longer_than: {figure: bath.longest}
        longest: {figure: wet.wait, before: rinsing}
        wait: {figure: settle.wait}
        agent: chlorine
        strength: {figure: bath.strength}
        temperature: {figure: bath.warmth}
        parts: [rim, foot]
        parts_are: apart
        water: boiled
        in: basin
        with: [tongs]
        wrap: no
        needs: [clock, basin]
      - step: pull-apart
        action: take apart
        do: Pull it apart.
""",
}
