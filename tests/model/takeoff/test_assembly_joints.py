"""Joints in words: all fixings of a sub-assembly are told, once, and none that belongs to another."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.surround import plan_surround
from model.takeoff.assemblies import list_assemblies
from model.takeoff.assembly_joints import list_joint_lines
from model.takeoff.fasteners import Means, list_fixings
from model.takeoff.surfaces import list_surfaces


@cache
def made(name):
    surround = plan_surround(read_demo(name))
    return surround, list_fixings(list_surfaces(surround), surround.job.shop.rates)


def lines_of(name, part):
    surround, fixings = made(name)
    assembly = next(a for a in list_assemblies(surround.boards) if a.name == part)
    return list_joint_lines(surround, assembly, fixings)


def pairs_of(lines):
    return {
        frozenset((one, other))
        for line in lines
        for one in line.marks[0].split(", ")
        for other in line.marks[1].split(", ")
    }


@pytest.mark.parametrize("name", list_demos())
def test_every_joint_inside_an_assembly_is_told(name):
    surround, fixings = made(name)
    for assembly in list_assemblies(surround.boards):
        own = set(assembly.pieces)
        marks = [m.rstrip("abcdefghijklmnopqrstuvwxyz") for m in surround.marks]
        wanted = {frozenset((marks[f.through], marks[f.into])) for f in fixings if {f.through, f.into} <= own}
        lines = [line for line in list_joint_lines(surround, assembly, fixings) if not line.to]
        assert pairs_of(lines) == wanted


def test_a_frame_is_pocket_screwed_and_a_plinth_mitred():
    words = {line.marks: line.words for line in lines_of("brick", "left column")}
    assert words["C1", "C2, C3"].startswith("glued, 2 × pocket screw")
    mitred = {marks for marks, text in words.items() if text.startswith("mitred, glued, 2 × 18 gauge brad")}
    assert mitred == {("P1", "P2"), ("P2", "P3")}


def test_what_only_touches_is_said_to_stay_dry():
    words = [line.words for line in lines_of("brick", "left column")]
    assert "meets it dry: neither glued nor nailed" in words


def test_a_joint_between_two_assemblies_is_told_with_the_one_that_goes_up_later():
    surround, fixings = made("brick")
    order = [a.name for a in list_assemblies(surround.boards)]
    for assembly in list_assemblies(surround.boards):
        for line in list_joint_lines(surround, assembly, fixings):
            assert not line.to or order.index(line.to) < order.index(assembly.name)


def test_every_driven_joint_between_assemblies_is_told_once():
    surround, fixings = made("gas")
    marks = [m.rstrip("abcdefghijklmnopqrstuvwxyz") for m in surround.marks]
    boards = surround.boards
    wanted = {
        frozenset((marks[f.through], marks[f.into]))
        for f in fixings
        if boards[f.through].assembly != boards[f.into].assembly and f.means is not Means.NONE
    }
    told = [
        pair
        for assembly in list_assemblies(boards)
        for pair in pairs_of(line for line in list_joint_lines(surround, assembly, fixings) if line.to)
    ]
    assert set(told) == wanted
