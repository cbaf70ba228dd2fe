#include "ui/columns/swing_form.h"

#include <QMenu>
#include <algorithm>

namespace shoulderline {

namespace {

// The swing of an assembly, and a station and a bored part of it; made where they are not there, as
// on a copy whose row is about to go.
Swing& swingOf(Assembly& assembly) {
    if (!assembly.swing) {
        assembly.swing.emplace();
    }
    return *assembly.swing;
}

RestStation& stationOf(Assembly& assembly, std::size_t index) {
    std::vector<RestStation>& stations = swingOf(assembly).stations;
    stations.resize(std::max(stations.size(), index + 1));
    return stations[index];
}

std::string& pinnedOf(Assembly& assembly, std::size_t index) {
    std::vector<std::string>& pinned = swingOf(assembly).pinned;
    pinned.resize(std::max(pinned.size(), index + 1));
    return pinned[index];
}

// A station is stated by its distance or by its lean: who states the one takes the other back. The
// one that the piece is drawn at keeps being so under a new name.
void keepOneEach(const Swing& before, Swing& swing) {
    for (std::size_t i = 0; i < std::min(before.stations.size(), swing.stations.size()); ++i) {
        RestStation& now = swing.stations[i];
        if (swing.at == before.stations[i].name) {
            swing.at = now.name;
        }
        if (now.behind.empty() || now.lean.empty()) {
            continue;
        }
        if (now.lean != before.stations[i].lean) {
            now.behind.clear();
        } else {
            now.lean.clear();
        }
    }
}

// A swing as one begins with it.
Swing usualSwing(const Piece& piece, const std::string& assembly) {
    Swing swing;
    for (const Part& part : piece.parts) {
        if (swing.leans.empty() && part.assembly == assembly) {
            swing.leans = part.name;
        }
    }
    swing.stations = {{"upright", "", "12 deg", {}}, {"leaning back", "", "20 deg", {}}};
    return swing;
}

}  // namespace

SwingForm::SwingForm(Document& document, Prompts& prompts, QWidget* parent)
    : FormRows(document, prompts, tr("swing"), parent) {}

const Assembly* SwingForm::thing() const {
    for (const Assembly& assembly : document_.piece().assemblies) {
        if (assembly.name == name_) {
            return &assembly;
        }
    }
    return nullptr;
}

void SwingForm::show(const std::string& assembly) {
    name_ = assembly;
    const Assembly* now = thing();
    setVisible(now != nullptr);
    if (now == nullptr) {
        return;
    }
    std::string rows = assembly + ":";
    if (now->swing) {
        rows += std::to_string(now->swing->stations.size()) + "," +
                std::to_string(now->swing->pinned.size());
        for (const RestStation& station : now->swing->stations) {
            rows += ";" + station.name;
        }
    }
    for (const Part& other : document_.piece().parts) {
        rows += "," + other.name;
    }
    if (rows != rows_) {
        rows_ = rows;
        remakeRows(*now, [&] { addRows(*now); });
    } else {
        refreshRows(*now);
    }
}

Result<void> SwingForm::change(const Change& change, Document::Kind kind) {
    const Assembly* now = thing();
    if (now == nullptr) {
        return fail(ErrorCode::UnknownName, utf8(tr("That assembly is gone.")));
    }
    Assembly next = *now;
    change(next);
    if (now->swing && next.swing) {
        keepOneEach(*now->swing, *next.swing);
    }
    return document_.apply(SetAssembly{next}, kind);
}

void SwingForm::addRows(const Assembly& assembly) {
    addCommands(assembly);
    if (!assembly.swing) {
        return;
    }
    const Swing& swing = *assembly.swing;
    addReference(tr("leans"), [](Assembly& a) -> std::string& { return swingOf(a).leans; });
    addReference(tr("on the bar"), [](Assembly& a) -> std::string& { return swingOf(a).rest; });
    QStringList stations;
    for (const RestStation& station : swing.stations) {
        stations << qt(station.name);
    }
    addChoice(
        tr("drawn at"),
        stations,
        [](const Assembly& a) {
            if (!a.swing || !a.swing->at.empty() || a.swing->stations.empty()) {
                return a.swing ? qt(a.swing->at) : QString();
            }
            return qt(a.swing->stations.front().name);
        },
        [](Assembly& a, const QString& word) { swingOf(a).at = utf8(word); });
    for (std::size_t i = 0; i < swing.stations.size(); ++i) {
        addStation(i);
    }
    addPins(swing);
}

void SwingForm::addCommands(const Assembly& assembly) {
    const QString title = tr("swing of %1").arg(qt(assembly.name));
    if (!assembly.swing) {
        addHeading(title, tr("let it swing"), [this](QWidget&) {
            changeOrTell([this](Assembly& a) { a.swing = usualSwing(document_.piece(), a.name); });
        });
        return;
    }
    addHeading(title, tr("change"), [this](QWidget& under) {
        QMenu menu(this);
        menu.addAction(tr("Add a Station"), this, [this] {
            changeOrTell([](Assembly& a) {
                std::vector<RestStation>& stations = swingOf(a).stations;
                const std::size_t number = stations.size() + 1;
                stations.push_back({"station " + std::to_string(number), "", "25 deg", {}});
            });
        });
        menu.addAction(tr("Take the Last Station Away"), this, [this] {
            changeOrTell([](Assembly& a) {
                Swing& swing = swingOf(a);
                if (swing.stations.size() > 1) {
                    swing.at = swing.at == swing.stations.back().name ? "" : swing.at;
                    swing.stations.pop_back();
                }
            });
        });
        menu.addAction(tr("Bore One More Part for the Pins"), this, [this] {
            changeOrTell([](Assembly& a) { swingOf(a).pinned.push_back(swingOf(a).leans); });
        });
        menu.addAction(tr("Bore One Part Less"), this, [this] {
            changeOrTell([](Assembly& a) {
                if (!swingOf(a).pinned.empty()) {
                    swingOf(a).pinned.pop_back();
                }
            });
        });
        menu.addAction(tr("Let It Stand Still"), this, [this] {
            changeOrTell([](Assembly& a) { a.swing.reset(); });
        });
        menu.exec(under.mapToGlobal(QPoint(0, under.height())));
    });
}

void SwingForm::addStation(std::size_t index) {
    addText(tr("station %1").arg(index + 1),
            [index](Assembly& a) -> std::string& { return stationOf(a, index).name; });
    addStatement(
        tr("leans by"),
        Dimension::Angle,
        true,
        [index](Assembly& a) -> Statement& { return stationOf(a, index).lean; },
        tr("by its distance"));
    addStatement(
        tr("bar behind the pivot"),
        Dimension::Length,
        true,
        [index](Assembly& a) -> Statement& { return stationOf(a, index).behind; },
        tr("by its lean"));
}

void SwingForm::addPins(const Swing& swing) {
    addSize(tr("pivot pin"), &Swing::pin, tr("none"));
    for (std::size_t i = 0; i < swing.pinned.size(); ++i) {
        addReference(tr("bored for it"),
                     [i](Assembly& a) -> std::string& { return pinnedOf(a, i); });
    }
    addSize(tr("deep"), &Swing::pinDepth, tr("through"));
    addSize(tr("spacer"), &Swing::spacer, tr("none"));
    addSize(tr("peg"), &Swing::peg, tr("none"));
    addSize(tr("peg's hole, deep"), &Swing::pegDepth, tr("through"));
}

void SwingForm::addSize(const QString& label, Statement Swing::*member, const QString& whenEmpty) {
    addStatement(
        label,
        Dimension::Length,
        true,
        [member](Assembly& a) -> Statement& { return swingOf(a).*member; },
        whenEmpty);
}

}  // namespace shoulderline
