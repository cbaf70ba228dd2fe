#include "ui/document/document.h"

#include <QFileInfo>
#include <algorithm>
#include <utility>

#include "core/measure/angle_text.h"
#include "core/measure/expression.h"
#include "core/resolve/resolve.h"
#include "core/storage/piece_file.h"
#include "ui/document/piece_command.h"
#include "ui/look/text.h"

namespace shoulderline {

namespace {

// What a measure comes to, shown; empty where it comes to nothing.
std::string shownMeasure(const ResolvedPiece& resolved,
                         std::string_view name,
                         const LengthStyle& style) {
    const auto it = std::find_if(
        resolved.measures.begin(), resolved.measures.end(), [&](const ResolvedMeasure& measure) {
            return measure.name == name;
        });
    if (it == resolved.measures.end() || !it->value) {
        return {};
    }
    if (const Result<Angle> angle = it->value->asAngle();
        angle && it->value->dimension() == Dimension::Angle) {
        return showAngle(*angle);
    }
    const Result<Length> length = it->value->asLength();
    return length ? showLength(*length, style) : std::string();
}

// What is chosen, followed through a change of its part's name.
Chosen renamed(const Chosen& chosen, const Edit& edit) {
    const auto* set = std::get_if<SetPart>(&edit);
    if (set == nullptr || set->name.empty() || set->name == set->part.name ||
        chosen.part.rfind(set->name, 0) != 0) {
        return chosen;
    }
    return {set->part.name + chosen.part.substr(set->name.size()), {}};
}

// Finds measures by name, as long as `resolved` is there.
Lookup lookupIn(const ResolvedPiece& resolved) {
    return [&resolved](std::string_view name) -> Result<Value> {
        for (const ResolvedMeasure& measure : resolved.measures) {
            if (measure.name == name && measure.value) {
                return *measure.value;
            }
        }
        return fail(ErrorCode::UnknownName, "There is no measure '" + std::string(name) + "'.");
    };
}

}  // namespace

Document::Document(Resources resources, QObject* parent)
    : QObject(parent), resources_(std::move(resources)) {
    start(Piece{}, {});
    connect(&undoStack_, &QUndoStack::cleanChanged, this, &Document::fileChanged);
}

const std::vector<Finding>& Document::findings() const {
    if (!findings_) {
        findings_ = findingsToCome_.get();
    }
    return *findings_;
}

const StrengthReport& Document::strength() const {
    if (!strength_) {
        strength_ = strengthReport(*piece_, *resolved_, resources_.species, resources_.strength);
    }
    return *strength_;
}

const MovementReport& Document::movement() const {
    if (!movement_) {
        movement_ = movementReport(*piece_, *resolved_, resources_.species);
    }
    return *movement_;
}

Result<Foreseen> Document::foresee(const Edit& edit) const {
    const Result<Piece> next = shoulderline::apply(*piece_, edit);
    if (!next) {
        return tl::unexpected(next.error());
    }
    const ResolvedPiece then =
        resolve(*next, resources_.rules, resources_.workshop, resolved_.get());
    if (then.troubles.size() > resolved_->troubles.size()) {
        return fail(ErrorCode::OutOfRange, then.troubles.back().message);
    }
    Foreseen foreseen{ripple(*resolved_, then), {}, {}};
    const std::vector<Finding> after = check(*next, then, resources_.species, resources_.strength);
    const auto addMissing = [](const std::vector<Finding>& from,
                               const std::vector<Finding>& in,
                               std::vector<std::string>& into) {
        for (const Finding& one : from) {
            const bool isThere = std::any_of(in.begin(), in.end(), [&](const Finding& other) {
                return other.message == one.message;
            });
            if (!isThere && one.severity != Severity::Note) {
                into.push_back(one.message);
            }
        }
    };
    addMissing(after, findings(), foreseen.newFindings);
    addMissing(findings(), after, foreseen.goneFindings);
    return foreseen;
}

Result<void> Document::apply(const Edit& edit, Kind kind) {
    Result<Piece> next = shoulderline::apply(*piece_, edit);
    if (!next) {
        return tl::unexpected(next.error());
    }
    if (*next == *piece_) {
        return {};
    }
    if (kind == Kind::Whole) {
        endBurst();
    }
    const PieceCommand::Target target{targetOf(edit), kind == Kind::Step ? burst_ : 0};
    isStepOn_ = target.burst != 0 && target.burst == burstNumber_ && target.name == burstOf_;
    if (!isStepOn_) {
        burstFrom_ = resolved_;
        burstOf_ = target.name;
        burstNumber_ = target.burst;
    }
    undoStack_.push(
        new PieceCommand(*this,
                         {piece_, chosen_},
                         {std::make_shared<const Piece>(std::move(*next)), renamed(chosen_, edit)},
                         qt(nameOf(edit)),
                         target));
    isStepOn_ = false;
    return {};
}

void Document::show(std::shared_ptr<const Piece> piece,
                    const Chosen& chosen,
                    const QString& name,
                    bool isUndo) {
    auto resolved = std::make_shared<const ResolvedPiece>(
        resolve(*piece, resources_.rules, resources_.workshop, resolved_.get()));
    const std::shared_ptr<const ResolvedPiece> from = isStepOn_ ? burstFrom_ : resolved_;
    lastChange_ = {name,
                   qt(shownMeasure(*from, utf8(name), piece->style)),
                   qt(shownMeasure(*resolved, utf8(name), piece->style)),
                   isUndo,
                   ripple(*from, *resolved)};
    take(std::move(piece), std::move(resolved));
    const bool isOther = chosen != chosen_;
    chosen_ = chosen;
    Q_EMIT resolvedAnew();
    Q_EMIT changed();
    if (isOther) {
        Q_EMIT chosenChanged();
    }
}

// The piece with what follows from it; findings begin to be looked for.
void Document::take(std::shared_ptr<const Piece> piece,
                    std::shared_ptr<const ResolvedPiece> resolved) {
    piece_ = std::move(piece);
    resolved_ = std::move(resolved);
    findings_.reset();
    strength_.reset();
    movement_.reset();
    findingsToCome_ = std::async(std::launch::async, [this, piece = piece_, resolved = resolved_] {
        return check(*piece, *resolved, resources_.species, resources_.strength);
    });
    ++generation_;
}

void Document::start(Piece piece, const QString& path, bool isRecovered) {
    auto stated = std::make_shared<const Piece>(std::move(piece));
    auto resolved = std::make_shared<const ResolvedPiece>(
        resolve(*stated, resources_.rules, resources_.workshop));
    take(std::move(stated), std::move(resolved));
    endBurst();
    lastChange_ = {};
    chosen_ = {};
    path_ = path;
    savedAt_ = path.isEmpty() ? QDateTime() : QFileInfo(path).lastModified();
    isRecovered_ = isRecovered;
    undoStack_.clear();
    Q_EMIT resolvedAnew();
    Q_EMIT changed();
    Q_EMIT chosenChanged();
    Q_EMIT fileChanged();
}

Result<void> Document::open(const QString& path) {
    Result<Piece> piece = loadPiece(utf8(path));
    if (!piece) {
        return tl::unexpected(piece.error());
    }
    start(std::move(*piece), path);
    return {};
}

Result<void> Document::save(const QString& path) {
    if (Result<void> saved = savePiece(utf8(path), *piece_); !saved) {
        return saved;
    }
    path_ = path;
    savedAt_ = QFileInfo(path).lastModified();
    isRecovered_ = false;
    undoStack_.setClean();
    Q_EMIT fileChanged();
    return {};
}

bool Document::isChangedOnDisk() const {
    return !path_.isEmpty() && QFileInfo::exists(path_) &&
           QFileInfo(path_).lastModified() != savedAt_;
}

Result<Length> Document::lengthOf(const std::string& text) const {
    const Result<Expression> expression = Expression::parse(text, piece_->unit);
    if (!expression) {
        return tl::unexpected(expression.error());
    }
    return expression->evaluateLength(lookupIn(*resolved_));
}

Result<int> Document::countOf(const std::string& text) const {
    const Result<Expression> expression = Expression::parse(text, piece_->unit);
    if (!expression) {
        return tl::unexpected(expression.error());
    }
    return expression->evaluateCount(lookupIn(*resolved_));
}

Result<std::string> Document::shownValue(const std::string& text, Dimension wanted) const {
    const Result<Expression> expression = Expression::parse(text, piece_->unit);
    if (!expression) {
        return tl::unexpected(expression.error());
    }
    const Lookup lookup = lookupIn(*resolved_);
    switch (wanted) {
        case Dimension::Length:
            return expression->evaluateLength(lookup).map(
                [this](Length length) { return shown(length); });
        case Dimension::Angle:
            return expression->evaluateAngle(lookup).map(showAngle);
        case Dimension::Number:
            return expression->evaluate(lookup)
                .and_then([](const Value& value) { return value.asNumber(); })
                .map([](double number) { return utf8(QString::number(number, 'g', 4)); });
    }
    return std::string();
}

std::string Document::shown(Length length) const {
    return showLength(length, piece_->style);
}

std::optional<std::size_t> Document::chosenPart() const {
    return chosen_.part.empty() ? std::nullopt : resolved_->findPart(chosen_.part);
}

std::optional<std::size_t> Document::chosenJoint() const {
    return chosen_.joint.empty() ? std::nullopt : resolved_->findJoint(chosen_.joint);
}

void Document::choosePart(std::optional<std::size_t> part) {
    choose({part ? resolved_->parts[*part].name : std::string(), {}});
}

void Document::chooseJoint(std::optional<std::size_t> joint) {
    if (!joint) {
        choose({chosen_.part, {}});
        return;
    }
    const ResolvedJoint& one = resolved_->joints[*joint];
    choose({resolved_->parts[one.tenoned].name, one.name});
}

void Document::choose(Chosen chosen) {
    if (chosen != chosen_) {
        chosen_ = std::move(chosen);
        Q_EMIT chosenChanged();
    }
}

}  // namespace shoulderline
