#include "tests/support/row_of_chairs.h"

#include "tests/support/pieces.h"

namespace shoulderline::testing {

namespace {

std::string numbered(const std::string& name, int number) {
    return name + " of chair " + std::to_string(number);
}

// The reference with its part numbered and its hand, if any, kept at the end.
std::string numberedReference(const std::string& reference, int number) {
    const PartReference split = splitReference(reference);
    const std::string hand = reference.substr(split.name.size());
    return reference.empty() ? reference : numbered(std::string(split.name), number) + hand;
}

void renumber(Swing& swing, int number) {
    swing.leans = numberedReference(swing.leans, number);
    swing.rest = numberedReference(swing.rest, number);
    for (std::string& reference : swing.pinned) {
        reference = numberedReference(reference, number);
    }
}

Part copyOf(const Part& part, int number) {
    Part copy = part;
    copy.name = numbered(part.name, number);
    copy.assembly = numbered(part.assembly.empty() ? "row" : part.assembly, number);
    const auto renumber = [number](std::string& reference) {
        reference = numberedReference(reference, number);
    };
    if (Spans* spans = std::get_if<Spans>(&copy.relation)) {
        renumber(spans->from);
        renumber(spans->to);
    } else if (Caps* caps = std::get_if<Caps>(&copy.relation)) {
        for (std::string& reference : caps->on) {
            renumber(reference);
        }
    }
    if (copy.spacing) {
        renumber(copy.spacing->after);
        renumber(copy.spacing->before);
    }
    return copy;
}

}  // namespace

Piece rowOfChairs(int count) {
    const Piece chair = sample("armchair");
    Piece row = chair;
    row.assemblies.clear();
    row.parts.clear();
    row.joints.clear();
    for (int number = 1; number <= count; ++number) {
        Assembly place;
        place.name = numbered("row", number);
        place.y = std::to_string((number - 1) * 60) + " in";
        row.assemblies.push_back(place);
        for (Assembly assembly : chair.assemblies) {
            assembly.name = numbered(assembly.name, number);
            assembly.parent = place.name;
            if (assembly.swing) {
                renumber(*assembly.swing, number);
            }
            row.assemblies.push_back(assembly);
        }
        for (const Part& part : chair.parts) {
            row.parts.push_back(copyOf(part, number));
        }
        for (JointStatement joint : chair.joints) {
            joint.tenoned = numbered(joint.tenoned, number);
            joint.mortised = numbered(joint.mortised, number);
            row.joints.push_back(joint);
        }
    }
    return row;
}

}  // namespace shoulderline::testing
