#include "core/storage/object_writer.h"
#include "core/storage/piece_text.h"
#include "core/storage/shape_json.h"
#include "core/storage/swing_json.h"
#include "core/storage/use_json.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

ordered_json json(const LengthStyle& style) {
    ordered_json object;
    switch (style.kind) {
        case LengthStyle::Kind::Fractions:
            object["kind"] = "fractions";
            object["denominator"] = style.denominator;
            break;
        case LengthStyle::Kind::DecimalInches:
            object["kind"] = "decimal inches";
            object["decimals"] = style.decimals;
            break;
        case LengthStyle::Kind::Millimetres:
            object["kind"] = "millimetres";
            object["decimals"] = style.decimals;
            break;
    }
    return object;
}

ordered_json json(const Measure& measure) {
    return ObjectWriter()
        .text("name", measure.name)
        .text("expression", measure.expression)
        .text("note", measure.note)
        .text("least", measure.least)
        .text("most", measure.most)
        .text("found", measure.found)
        .extras(measure.extras)
        .done();
}

ordered_json json(const Stock& stock) {
    return ObjectWriter()
        .text("name", stock.name)
        .text("species", stock.species)
        .text("cut", wordFor(stock.cut))
        .text("thickness", stock.thickness)
        .text("measured_thickness", stock.measuredThickness)
        .text("greatest_width", stock.greatestWidth)
        .text("greatest_length", stock.greatestLength)
        .flag("heat_treated", stock.isHeatTreated)
        .extras(stock.extras)
        .done();
}

ordered_json json(const Assembly& assembly) {
    ObjectWriter writer;
    writer.text("name", assembly.name)
        .text("parent", assembly.parent)
        .text("x", assembly.x)
        .text("y", assembly.y)
        .text("z", assembly.z)
        .text("about_x", assembly.aboutX)
        .text("about_y", assembly.aboutY)
        .text("about_z", assembly.aboutZ);
    if (assembly.swing) {
        writer.value("swing", json(*assembly.swing));
    }
    return writer.text("note", assembly.note).extras(assembly.extras).done();
}

ordered_json json(const Position& position) {
    return ObjectWriter().text("face", wordFor(position.face)).text("at", position.at).done();
}

ordered_json json(const Stands& stands) {
    return ObjectWriter()
        .text("kind", "stands")
        .value("x", stands.x == Position{} ? ordered_json() : json(stands.x))
        .value("y", stands.y == Position{} ? ordered_json() : json(stands.y))
        .text("foot", stands.foot)
        .text("height", stands.height)
        .text("rake", stands.rake)
        .text("splay", stands.splay)
        .text("at_level", stands.atLevel)
        .done();
}

ordered_json json(const Setting& setting) {
    return ObjectWriter().text("from", wordFor(setting.from)).text("by", setting.by).done();
}

ordered_json json(const Fills& fills) {
    ObjectWriter writer;
    writer.text("kind", "fills").value("edges", fills.edges).value("ends", fills.ends);
    if (fills.set != Setting{}) {
        writer.value("set", json(fills.set));
    }
    return writer.done();
}

ordered_json json(const Spans& spans) {
    ObjectWriter writer;
    writer.text("kind", "spans").text("from", spans.from).text("to", spans.to);
    if (spans.level) {
        writer.value("level", json(*spans.level));
    }
    if (spans.levelTo) {
        writer.value("level_to", json(*spans.levelTo));
    }
    if (spans.set != Setting{}) {
        writer.value("set", json(spans.set));
    }
    writer.flag("flat", spans.flat).flag("angled", spans.angled).flag("leans", spans.leans);
    if (spans.fit != ShoulderFit::Follow) {
        writer.text("on_shaped_faces", wordFor(spans.fit));
    }
    if (spans.givesWay != GivesWay{}) {
        writer.value("gives_way",
                     ObjectWriter()
                         .text("to", spans.givesWay.to)
                         .text("towards", wordFor(spans.givesWay.towards))
                         .done());
    }
    return writer.done();
}

ordered_json json(const Caps& caps) {
    ordered_json overhang = ordered_json::object();
    for (const auto& [side, statement] : caps.overhang) {
        overhang[std::string(wordFor(side))] = statement;
    }
    return ObjectWriter()
        .text("kind", "caps")
        .value("on", caps.on)
        .text("runs", wordFor(caps.runs))
        .value("overhang", overhang)
        .done();
}

ordered_json json(const Free& free) {
    return ObjectWriter()
        .text("kind", "free")
        .text("x", free.x)
        .text("y", free.y)
        .text("z", free.z)
        .text("about_x", free.aboutX)
        .text("about_y", free.aboutY)
        .text("about_z", free.aboutZ)
        .text("length", free.length)
        .done();
}

ordered_json json(const Part& part) {
    ObjectWriter writer;
    writer.text("name", part.name)
        .text("role", wordFor(part.role))
        .text("assembly", part.assembly)
        .text("stock", part.stock)
        .text("width", part.width)
        .text("thickness", part.thickness)
        .text("found_width", part.foundWidth)
        .text("found_thickness", part.foundThickness);
    if (part.section != SectionForm::Square) {
        writer.text("section", wordFor(part.section));
    }
    writer.flag("pair", part.pair);
    if (part.faceEdge != Side::Centre) {
        writer.text("face_edge", wordFor(part.faceEdge));
    }
    writer.value("relation",
                 std::visit([](const auto& relation) { return json(relation); }, part.relation));
    if (part.spacing) {
        writer.value("spacing",
                     ObjectWriter()
                         .text("after", part.spacing->after)
                         .text("before", part.spacing->before)
                         .text("count", part.spacing->count)
                         .text("greatest_gap", part.spacing->greatestGap)
                         .text("pitch", part.spacing->pitch)
                         .done());
    }
    writer.value("shape", json(part.shape));
    if (part.bend) {
        writer.value("bend", json(*part.bend));
    }
    return writer.value("cuts", json(part.cuts))
        .value("easings", json(part.easings))
        .text("note", part.note)
        .extras(part.extras)
        .done();
}

ordered_json json(const JointStatement& joint) {
    ordered_json sizes = ordered_json::object();
    for (const auto& [name, size] : joint.sizes) {
        sizes[std::string(wordFor(name))] = ObjectWriter()
                                                .text("state", wordFor(size.state))
                                                .text("expression", size.expression)
                                                .done();
    }
    ordered_json features = ordered_json::array();
    for (const JointFeature feature : joint.features) {
        features.push_back(wordFor(feature));
    }
    return ObjectWriter()
        .text("tenoned", joint.tenoned)
        .text("mortised", joint.mortised)
        .text("kind", joint.kind ? wordFor(*joint.kind) : std::string_view())
        .value("features", features)
        .value("sizes", sizes)
        .text("stock", joint.stock)
        .text("note", joint.note)
        .extras(joint.extras)
        .done();
}

ordered_json json(const HouseRule& rule) {
    return ObjectWriter()
        .text("id", rule.id)
        .text("value", rule.value)
        .text("note", rule.note)
        .extras(rule.extras)
        .done();
}

template <class Item>
ordered_json list(const std::vector<Item>& items) {
    return jsonList(items, [](const Item& item) { return json(item); });
}

}  // namespace

std::string writePiece(const Piece& piece) {
    ordered_json document;
    document["format"] = "shoulderline piece";
    document["version"] = kPieceVersion;
    ObjectWriter members;
    members.text("name", piece.name)
        .text("note", piece.note)
        .text("unit", piece.unit == Unit::Inch ? "in" : "mm")
        .value("style", json(piece.style))
        .value("measures", list(piece.measures))
        .value("stocks", list(piece.stocks))
        .value("assemblies", list(piece.assemblies))
        .value("parts", list(piece.parts))
        .value("joints", list(piece.joints))
        .value("house_rules", list(piece.houseRules))
        .value("rack", piece.rack);
    writeUse(piece.use, members);
    const ordered_json written = members.extras(piece.extras).done();
    for (const auto& item : written.items()) {
        document[item.key()] = item.value();
    }
    // Texts were read as UTF-8; anything else that came in by the window is replaced, not refused.
    return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace shoulderline
