#include "core/storage/shape_json.h"

#include <array>

#include "core/storage/object_writer.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

constexpr std::array<Face, 6> kFaces{
    Face::FaceSide, Face::BackSide, Face::FaceEdge, Face::BackEdge, Face::StartEnd, Face::FarEnd};

// Left out where it is the start.
std::string_view datumText(Datum datum) {
    return datum == Datum::Start ? std::string_view() : wordFor(datum);
}

Datum readDatum(ObjectReader& in, const char* name) {
    return in.word<Datum>(name, fromWord<Datum>, listOfWords<Datum>()).value_or(Datum::Start);
}

ordered_json json(const EdgePoint& point) {
    return ObjectWriter()
        .text("from", datumText(point.from))
        .text("along", point.along)
        .text("in", point.in)
        .text("run", point.run == Run::Line ? std::string_view() : wordFor(point.run))
        .text("bow", point.bow)
        .extras(point.extras)
        .done();
}

EdgePoint readPoint(ObjectReader& in) {
    EdgePoint point;
    point.from = readDatum(in, "from");
    point.along = in.text("along");
    point.in = in.text("in");
    point.run = in.word<Run>("run", fromWord<Run>, listOfWords<Run>()).value_or(Run::Line);
    point.bow = in.text("bow");
    point.extras = in.extras();
    return point;
}

ordered_json json(const CutStatement& cut) {
    return ObjectWriter()
        .text("kind", wordFor(cut.kind))
        .text("face", wordFor(cut.face))
        .text("along_from", datumText(cut.alongFrom))
        .text("along", cut.along)
        .text("length", cut.length)
        .text("across_from", datumText(cut.acrossFrom))
        .text("across", cut.across)
        .text("width", cut.width)
        .text("depth", cut.depth)
        .text("tilt_along", cut.tiltAlong)
        .text("tilt_across", cut.tiltAcross)
        .text("head", cut.head == ScrewHead::Plain ? std::string_view() : wordFor(cut.head))
        .text("head_width", cut.headWidth)
        .text("head_depth", cut.headDepth)
        .text("proud", cut.proud)
        .text("slot", cut.slot == SlotWay::Round ? std::string_view() : wordFor(cut.slot))
        .text("note", cut.note)
        .extras(cut.extras)
        .done();
}

}  // namespace

ordered_json json(const Shape& shape) {
    ordered_json sides = ordered_json::object();
    for (const auto& [face, points] : shape) {
        sides[std::string(wordFor(face))] =
            jsonList(points, [](const EdgePoint& point) { return json(point); });
    }
    return sides;
}

ordered_json json(const std::vector<CutStatement>& cuts) {
    return jsonList(cuts, [](const CutStatement& cut) { return json(cut); });
}

ordered_json json(const std::vector<EasingStatement>& easings) {
    return jsonList(easings, [](const EasingStatement& easing) {
        return ObjectWriter()
            .text("kind", wordFor(easing.kind))
            .text("at", wordFor(easing.at))
            .text("size", easing.size)
            .text("second", easing.second)
            .text("from_start", easing.fromStart)
            .text("from_far", easing.fromFar)
            .text("run_out", easing.runOut)
            .text("note", easing.note)
            .extras(easing.extras)
            .done();
    });
}

ordered_json json(const Bend& bend) {
    return ObjectWriter()
        .text("method", wordFor(bend.method))
        .text("hollow", bend.hollow == Face::FaceSide ? std::string_view() : wordFor(bend.hollow))
        .text("rise", bend.rise)
        .text("radius", bend.radius)
        .value("through",
               jsonList(bend.through,
                        [](const BowPoint& point) {
                            return ObjectWriter()
                                .text("from", datumText(point.from))
                                .text("along", point.along)
                                .text("rise", point.rise)
                                .extras(point.extras)
                                .done();
                        }))
        .text("plies", bend.plies)
        .text("ply", bend.ply)
        .text("springback", bend.springback)
        .text("shoulders",
              bend.shoulders == BendShoulders::Chord ? std::string_view() : wordFor(bend.shoulders))
        .extras(bend.extras)
        .done();
}

std::optional<Bend> readBend(ObjectReader& part) {
    std::optional<Bend> bend;
    part.object("bend", [&](ObjectReader& in) {
        bend.emplace();
        bend->method =
            in.word<BendMethod>("method", fromWord<BendMethod>, listOfWords<BendMethod>())
                .value_or(BendMethod::Laminated);
        bend->hollow =
            in.word<Face>("hollow", fromWord<Face>, listOfWords<Face>()).value_or(Face::FaceSide);
        if (bend->hollow != Face::FaceSide && bend->hollow != Face::BackSide) {
            in.refuse("A bent part is hollow on its face side or its back side.",
                      in.placeOf("hollow"));
        }
        bend->rise = in.text("rise");
        bend->radius = in.text("radius");
        in.each("through", [&](ObjectReader& inner) {
            BowPoint point;
            point.from = readDatum(inner, "from");
            point.along = inner.text("along");
            point.rise = inner.text("rise");
            point.extras = inner.extras();
            bend->through.push_back(std::move(point));
        });
        bend->plies = in.text("plies");
        bend->ply = in.text("ply");
        bend->springback = in.text("springback");
        bend->shoulders = in.word<BendShoulders>(
                                "shoulders", fromWord<BendShoulders>, listOfWords<BendShoulders>())
                              .value_or(BendShoulders::Chord);
        bend->extras = in.extras();
    });
    return bend;
}

Shape readShape(ObjectReader& part) {
    part.eachMember(
        "shape", [&](const std::string& key, const ordered_json&, const std::string& where) {
            if (!fromWord<Face>(key)) {
                part.refuse("'" + key + "' is not one of: " + listOfWords<Face>() + ".", where);
            }
        });
    Shape shape;
    part.object("shape", [&](ObjectReader& inner) {
        for (const Face face : kFaces) {
            // The words are literals, so they end as a C string does.
            inner.each(wordFor(face).data(),
                       [&](ObjectReader& point) { shape[face].push_back(readPoint(point)); });
        }
    });
    return shape;
}

std::vector<CutStatement> readCuts(ObjectReader& part) {
    std::vector<CutStatement> cuts;
    part.each("cuts", [&](ObjectReader& in) {
        CutStatement cut;
        cut.kind = in.word<CutKind>("kind", fromWord<CutKind>, listOfWords<CutKind>())
                       .value_or(CutKind::Groove);
        cut.face =
            in.word<Face>("face", fromWord<Face>, listOfWords<Face>()).value_or(Face::FaceSide);
        cut.alongFrom = readDatum(in, "along_from");
        cut.along = in.text("along");
        cut.length = in.text("length");
        cut.acrossFrom = readDatum(in, "across_from");
        cut.across = in.text("across");
        cut.width = in.text("width");
        cut.depth = in.text("depth");
        cut.tiltAlong = in.text("tilt_along");
        cut.tiltAcross = in.text("tilt_across");
        cut.head = in.word<ScrewHead>("head", fromWord<ScrewHead>, listOfWords<ScrewHead>())
                       .value_or(ScrewHead::Plain);
        cut.headWidth = in.text("head_width");
        cut.headDepth = in.text("head_depth");
        cut.proud = in.text("proud");
        cut.slot = in.word<SlotWay>("slot", fromWord<SlotWay>, listOfWords<SlotWay>())
                       .value_or(SlotWay::Round);
        cut.note = in.text("note");
        cut.extras = in.extras();
        cuts.push_back(std::move(cut));
    });
    return cuts;
}

std::vector<EasingStatement> readEasings(ObjectReader& part) {
    std::vector<EasingStatement> easings;
    part.each("easings", [&](ObjectReader& in) {
        EasingStatement easing;
        easing.kind = in.word<EasingKind>("kind", fromWord<EasingKind>, listOfWords<EasingKind>())
                          .value_or(EasingKind::Chamfer);
        easing.at = in.word<Arris>("at", fromWord<Arris>, listOfWords<Arris>())
                        .value_or(Arris::FaceSideFaceEdge);
        easing.size = in.text("size");
        easing.second = in.text("second");
        easing.fromStart = in.text("from_start");
        easing.fromFar = in.text("from_far");
        easing.runOut = in.text("run_out");
        easing.note = in.text("note");
        easing.extras = in.extras();
        easings.push_back(std::move(easing));
    });
    return easings;
}

}  // namespace shoulderline
