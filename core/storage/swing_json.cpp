#include "core/storage/swing_json.h"

#include "core/storage/object_writer.h"

namespace shoulderline {

namespace {

nlohmann::ordered_json stationJson(const RestStation& station) {
    ObjectWriter out;
    out.text("name", station.name).text("behind", station.behind).text("lean", station.lean);
    return out.extras(station.extras).done();
}

}  // namespace

nlohmann::ordered_json json(const Swing& swing) {
    ObjectWriter out;
    out.text("leans", swing.leans).text("rest", swing.rest);
    out.value("stations", jsonList(swing.stations, stationJson));
    return out.text("at", swing.at)
        .text("pin", swing.pin)
        .value("pinned", swing.pinned)
        .text("pin_depth", swing.pinDepth)
        .text("spacer", swing.spacer)
        .text("peg", swing.peg)
        .text("peg_depth", swing.pegDepth)
        .extras(swing.extras)
        .done();
}

std::optional<Swing> readSwing(ObjectReader& assembly) {
    std::optional<Swing> swing;
    assembly.object("swing", [&](ObjectReader& in) {
        swing.emplace();
        swing->leans = in.text("leans");
        swing->rest = in.text("rest");
        in.each("stations", [&](ObjectReader& inner) {
            RestStation station;
            station.name = inner.neededText("name");
            station.behind = inner.text("behind");
            station.lean = inner.text("lean");
            station.extras = inner.extras();
            swing->stations.push_back(std::move(station));
        });
        swing->at = in.text("at");
        swing->pin = in.text("pin");
        swing->pinned = in.texts("pinned");
        swing->pinDepth = in.text("pin_depth");
        swing->spacer = in.text("spacer");
        swing->peg = in.text("peg");
        swing->pegDepth = in.text("peg_depth");
        swing->extras = in.extras();
    });
    return swing;
}

}  // namespace shoulderline
