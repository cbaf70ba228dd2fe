#include "core/storage/use_json.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

ordered_json json(const StatedLoad& load) {
    return ObjectWriter()
        .text("name", load.name)
        .text("on", load.on)
        .text("towards", wordFor(load.towards))
        .text("newtons", load.newtons)
        .text("height", load.height)
        .flag("repeated", load.isRepeated)
        .text("note", load.note)
        .extras(load.extras)
        .done();
}

ordered_json json(const StrengthTest& test) {
    return ObjectWriter()
        .text("tenoned", test.tenoned)
        .text("mortised", test.mortised)
        .text("newton_metres", test.newtonMetres)
        .text("note", test.note)
        .extras(test.extras)
        .done();
}

ordered_json json(const RoomAir& air) {
    return ObjectWriter()
        .text("moisture", air.moisture)
        .text("celsius", air.celsius)
        .text("humidity", air.humidity)
        .done();
}

ordered_json json(const Climate& climate) {
    return ObjectWriter().value("dry", json(climate.dry)).value("damp", json(climate.damp)).done();
}

template <class Item>
ordered_json useList(const std::vector<Item>& items) {
    return jsonList(items, [](const Item& item) { return json(item); });
}

StatedLoad readLoad(ObjectReader& in) {
    StatedLoad load;
    load.name = in.neededText("name");
    load.on = in.text("on");
    load.towards =
        in.word<Side>("towards", fromWord<Side>, listOfWords<Side>()).value_or(Side::Back);
    load.newtons = in.text("newtons");
    load.height = in.text("height");
    load.isRepeated = in.flag("repeated");
    load.note = in.text("note");
    load.extras = in.extras();
    return load;
}

StrengthTest readTest(ObjectReader& in) {
    StrengthTest test;
    test.tenoned = in.neededText("tenoned");
    test.mortised = in.neededText("mortised");
    test.newtonMetres = in.text("newton_metres");
    test.note = in.text("note");
    test.extras = in.extras();
    return test;
}

RoomAir readAir(ObjectReader& in) {
    RoomAir air;
    air.moisture = in.text("moisture");
    air.celsius = in.text("celsius");
    air.humidity = in.text("humidity");
    return air;
}

}  // namespace

Use readUse(ObjectReader& piece) {
    Use use;
    piece.each("loads", [&](ObjectReader& item) { use.loads.push_back(readLoad(item)); });
    piece.each("strength_tests", [&](ObjectReader& item) { use.tests.push_back(readTest(item)); });
    piece.object("climate", [&](ObjectReader& inner) {
        inner.object("dry", [&](ObjectReader& air) { use.climate.dry = readAir(air); });
        inner.object("damp", [&](ObjectReader& air) { use.climate.damp = readAir(air); });
    });
    use.adhesive = piece.text("adhesive");
    return use;
}

void writeUse(const Use& use, ObjectWriter& piece) {
    piece.value("loads", useList(use.loads))
        .value("strength_tests", useList(use.tests))
        .value("climate", json(use.climate))
        .text("adhesive", use.adhesive);
}

}  // namespace shoulderline
