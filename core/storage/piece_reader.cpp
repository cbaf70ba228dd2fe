#include "core/storage/json_text.h"
#include "core/storage/object_reader.h"
#include "core/storage/piece_text.h"
#include "core/storage/shape_json.h"
#include "core/storage/swing_json.h"
#include "core/storage/use_json.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

LengthStyle readStyle(ObjectReader& in) {
    const std::string kind = in.text("kind");
    if (kind == "decimal inches") {
        return LengthStyle::decimalInches(in.whole("decimals", 1, 4, 3));
    }
    if (kind == "millimetres") {
        return LengthStyle::millimetres(in.whole("decimals", 0, 1, 0));
    }
    if (kind != "fractions") {
        in.refuse("'" + kind + "' is not one of: fractions, decimal inches, millimetres.",
                  in.placeOf("kind"));
    }
    const int denominator = in.whole("denominator", 8, 64, 16);
    if (denominator != 8 && denominator != 16 && denominator != 32 && denominator != 64) {
        in.refuse("A denominator of 8, 16, 32 or 64 is expected.", in.placeOf("denominator"));
    }
    return LengthStyle::fractions(denominator);
}

Measure readMeasure(ObjectReader& in) {
    Measure measure;
    measure.name = in.neededText("name");
    measure.expression = in.text("expression");
    measure.note = in.text("note");
    measure.least = in.text("least");
    measure.most = in.text("most");
    measure.found = in.text("found");
    measure.extras = in.extras();
    return measure;
}

Stock readStock(ObjectReader& in) {
    Stock stock;
    stock.name = in.neededText("name");
    stock.species = in.text("species");
    stock.cut = in.word<Cut>("cut", fromWord<Cut>, listOfWords<Cut>()).value_or(Cut::Flat);
    stock.thickness = in.text("thickness");
    stock.measuredThickness = in.text("measured_thickness");
    stock.greatestWidth = in.text("greatest_width");
    stock.greatestLength = in.text("greatest_length");
    stock.isHeatTreated = in.flag("heat_treated");
    stock.extras = in.extras();
    return stock;
}

Assembly readAssembly(ObjectReader& in) {
    Assembly assembly;
    assembly.name = in.neededText("name");
    assembly.parent = in.text("parent");
    assembly.x = in.text("x");
    assembly.y = in.text("y");
    assembly.z = in.text("z");
    assembly.aboutX = in.text("about_x");
    assembly.aboutY = in.text("about_y");
    assembly.aboutZ = in.text("about_z");
    assembly.swing = readSwing(in);
    assembly.note = in.text("note");
    assembly.extras = in.extras();
    return assembly;
}

Side readSide(ObjectReader& in, const char* name, Side ifAbsent) {
    return in.word<Side>(name, fromWord<Side>, listOfWords<Side>()).value_or(ifAbsent);
}

Position readPosition(ObjectReader& in) {
    Position position;
    position.face = readSide(in, "face", Side::Centre);
    position.at = in.text("at");
    return position;
}

Stands readStands(ObjectReader& in) {
    Stands stands;
    in.object("x", [&](ObjectReader& inner) { stands.x = readPosition(inner); });
    in.object("y", [&](ObjectReader& inner) { stands.y = readPosition(inner); });
    stands.foot = in.text("foot");
    stands.height = in.text("height");
    stands.rake = in.text("rake");
    stands.splay = in.text("splay");
    stands.atLevel = in.text("at_level");
    return stands;
}

Setting readSetting(ObjectReader& in) {
    Setting setting;
    setting.from = readSide(in, "from", Side::Centre);
    setting.by = in.text("by");
    return setting;
}

Spans readSpans(ObjectReader& in) {
    Spans spans;
    spans.from = in.text("from");
    spans.to = in.text("to");
    in.object("level", [&](ObjectReader& inner) { spans.level = readPosition(inner); });
    in.object("level_to", [&](ObjectReader& inner) { spans.levelTo = readPosition(inner); });
    in.object("set", [&](ObjectReader& inner) { spans.set = readSetting(inner); });
    spans.flat = in.flag("flat");
    spans.angled = in.flag("angled");
    spans.leans = in.flag("leans");
    spans.fit =
        in.word<ShoulderFit>("on_shaped_faces", fromWord<ShoulderFit>, listOfWords<ShoulderFit>())
            .value_or(ShoulderFit::Follow);
    in.object("gives_way", [&](ObjectReader& inner) {
        spans.givesWay.to = inner.text("to");
        spans.givesWay.towards = readSide(inner, "towards", Side::Centre);
    });
    return spans;
}

// Two names; more or fewer are refused.
std::array<std::string, 2> readTwo(ObjectReader& in, const char* name) {
    const std::vector<std::string> names = in.texts(name);
    if (names.size() != 2) {
        in.refuse("The names of two parts are expected.", in.placeOf(name));
        return {};
    }
    return {names[0], names[1]};
}

Fills readFills(ObjectReader& in) {
    Fills fills;
    fills.edges = readTwo(in, "edges");
    fills.ends = readTwo(in, "ends");
    in.object("set", [&](ObjectReader& inner) { fills.set = readSetting(inner); });
    return fills;
}

Caps readCaps(ObjectReader& in) {
    Caps caps;
    caps.on = in.texts("on");
    caps.runs = readSide(in, "runs", Side::Back);
    in.eachMember("overhang",
                  [&](const std::string& key, const ordered_json& value, const std::string& where) {
                      const std::optional<Side> side = fromWord<Side>(key);
                      if (!side || !value.is_string()) {
                          in.refuse(
                              "An overhang is stated as a text under left, right, front or back.",
                              where);
                      } else {
                          caps.overhang[*side] = value.get<std::string>();
                      }
                  });
    return caps;
}

Free readFree(ObjectReader& in) {
    Free free;
    free.x = in.text("x");
    free.y = in.text("y");
    free.z = in.text("z");
    free.aboutX = in.text("about_x");
    free.aboutY = in.text("about_y");
    free.aboutZ = in.text("about_z");
    free.length = in.text("length");
    return free;
}

Relation readRelation(ObjectReader& in) {
    const std::string kind = in.text("kind");
    if (kind == "stands") {
        return readStands(in);
    }
    if (kind == "spans") {
        return readSpans(in);
    }
    if (kind == "caps") {
        return readCaps(in);
    }
    if (kind == "fills") {
        return readFills(in);
    }
    if (kind != "free") {
        in.refuse("'" + kind + "' is not one of: stands, spans, caps, fills, free.",
                  in.placeOf("kind"));
    }
    return readFree(in);
}

Part readPart(ObjectReader& in) {
    Part part;
    part.name = in.neededText("name");
    part.role = in.word<Role>("role", fromWord<Role>, listOfWords<Role>()).value_or(Role::Rail);
    part.assembly = in.text("assembly");
    part.stock = in.text("stock");
    part.width = in.text("width");
    part.thickness = in.text("thickness");
    part.foundWidth = in.text("found_width");
    part.foundThickness = in.text("found_thickness");
    part.section =
        in.word<SectionForm>("section", fromWord<SectionForm>, listOfWords<SectionForm>())
            .value_or(SectionForm::Square);
    part.pair = in.flag("pair");
    part.faceEdge = readSide(in, "face_edge", Side::Centre);
    bool hasRelation = false;
    in.object("relation", [&](ObjectReader& inner) {
        part.relation = readRelation(inner);
        hasRelation = true;
    });
    if (!hasRelation) {
        in.refuse("A relation is expected for the part '" + part.name + "', and there is none.",
                  in.placeOf("relation"));
    }
    in.object("spacing", [&](ObjectReader& inner) {
        Spacing spacing;
        spacing.after = inner.text("after");
        spacing.before = inner.text("before");
        spacing.count = inner.text("count");
        spacing.greatestGap = inner.text("greatest_gap");
        spacing.pitch = inner.text("pitch");
        part.spacing = spacing;
    });
    part.shape = readShape(in);
    part.bend = readBend(in);
    part.cuts = readCuts(in);
    part.easings = readEasings(in);
    part.note = in.text("note");
    part.extras = in.extras();
    return part;
}

JointStatement readJoint(ObjectReader& in) {
    JointStatement joint;
    joint.tenoned = in.neededText("tenoned");
    joint.mortised = in.neededText("mortised");
    joint.kind = in.word<JointKind>("kind", fromWord<JointKind>, listOfWords<JointKind>());
    for (const std::string& text : in.texts("features")) {
        if (const std::optional<JointFeature> feature = fromWord<JointFeature>(text)) {
            joint.features.insert(*feature);
        } else {
            in.refuse("'" + text + "' is not one of: " + listOfWords<JointFeature>() + ".",
                      in.placeOf("features"));
        }
    }
    in.eachObject("sizes", [&](const std::string& key, ObjectReader& size) {
        const std::optional<SizeName> name = fromWord<SizeName>(key);
        if (!name) {
            in.refuse("'" + key + "' is not one of: " + listOfWords<SizeName>() + ".",
                      size.where());
            return;
        }
        SizeStatement statement;
        statement.state =
            size.word<SizeState>("state", fromWord<SizeState>, listOfWords<SizeState>())
                .value_or(SizeState::Stated);
        if (statement.state == SizeState::ByRule) {
            in.refuse("A size that is stated is not 'by rule'; leave it out instead.",
                      size.where());
        }
        statement.expression = size.neededText("expression");
        joint.sizes[*name] = statement;
    });
    joint.stock = in.text("stock");
    joint.note = in.text("note");
    joint.extras = in.extras();
    return joint;
}

Piece readMembers(ObjectReader& in) {
    Piece piece;
    piece.name = in.text("name");
    piece.note = in.text("note");
    const std::string unit = in.text("unit");
    piece.unit = unit == "mm" ? Unit::Millimetre : Unit::Inch;
    if (!unit.empty() && unit != "in" && unit != "mm") {
        in.refuse("'" + unit + "' is not one of: in, mm.", in.placeOf("unit"));
    }
    in.object("style", [&](ObjectReader& inner) { piece.style = readStyle(inner); });
    in.each("measures", [&](ObjectReader& item) { piece.measures.push_back(readMeasure(item)); });
    in.each("stocks", [&](ObjectReader& item) { piece.stocks.push_back(readStock(item)); });
    in.each("assemblies",
            [&](ObjectReader& item) { piece.assemblies.push_back(readAssembly(item)); });
    in.each("parts", [&](ObjectReader& item) { piece.parts.push_back(readPart(item)); });
    in.each("joints", [&](ObjectReader& item) { piece.joints.push_back(readJoint(item)); });
    in.each("house_rules", [&](ObjectReader& item) {
        HouseRule rule{item.neededText("id"), item.text("value"), item.text("note"), {}};
        rule.extras = item.extras();
        piece.houseRules.push_back(std::move(rule));
    });
    piece.rack = in.texts("rack");
    piece.use = readUse(in);
    piece.extras = in.extras();
    return piece;
}

}  // namespace

Result<Piece> readPiece(std::string_view text) {
    const Result<ordered_json> document = readJson(text);
    if (!document) {
        return tl::unexpected(document.error());
    }
    Reading reading;
    ObjectReader in(*document, "", reading);
    if (in.text("format") != "shoulderline piece") {
        reading.refuse("This is not a piece: its format is expected to be 'shoulderline piece'.",
                       "/format");
    }
    constexpr int kNewestImaginable = 1'000'000;
    const int version = in.whole("version", 1, kNewestImaginable, 0);
    if (version > kPieceVersion && !reading.error()) {
        return fail(ErrorCode::NewerFile,
                    "The piece was saved by a newer Shoulderline (format " +
                        std::to_string(version) + "); this one reads up to format " +
                        std::to_string(kPieceVersion) + ".",
                    "/version");
    }
    if (version == 0) {
        reading.refuse("A version is expected, and there is none.", "/version");
    }
    Piece piece = readMembers(in);
    if (reading.error()) {
        return tl::unexpected(*reading.error());
    }
    return piece;
}

}  // namespace shoulderline
