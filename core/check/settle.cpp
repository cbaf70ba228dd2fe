#include "core/check/settle.h"

#include <algorithm>

#include "core/check/neighbours.h"
#include "core/check/rail_moves.h"
#include "core/check/settle_ends.h"
#include "core/resolve/resolve.h"

namespace shoulderline {

namespace {

// The moves that the rule book allows, of rails whose mortises meet others as settled so far.
std::vector<RailMove> movesFor(const Piece& piece,
                               const SetJointFeatures& edit,
                               const Workbench& bench) {
    std::vector<RailMove> moves;
    const Result<Piece> settled = apply(piece, edit);
    if (!settled) {
        return moves;
    }
    const ResolvedPiece resolved = resolve(*settled, bench.rules, bench.workshop);
    const double least = resolved.rules[RuleId::MortiseGapLeast].value;
    const Length most = resolved.rules[RuleId::SettleMoveMost].length();
    const auto add = [&](const Cavity& mine, const Cavity& other, const ResolvedPart& post) {
        if (mine.mortise == nullptr) {
            return;
        }
        for (RailMove& move : railMoves(*settled, resolved, *mine.mortise, other, post, least)) {
            const bool isNew = std::none_of(moves.begin(), moves.end(), [&](const RailMove& known) {
                return known.edit.part == move.edit.part;
            });
            if (isNew && move.by <= most + kLengthTolerance) {
                moves.push_back(std::move(move));
            }
        }
    };
    for (const Meeting& meeting : allMeetings(resolved)) {
        add(meeting.first, meeting.second, resolved.parts[meeting.part]);
        add(meeting.second, meeting.first, resolved.parts[meeting.part]);
    }
    return moves;
}

bool isBetter(const Settlement& one, const Settlement& other) {
    if (one.meetingsAfter != other.meetingsAfter) {
        return one.meetingsAfter < other.meetingsAfter;
    }
    return one.weakest.value_or(0.0) > other.weakest.value_or(0.0) * (1.0 + 1e-9);
}

// How far a rail was moved before it is moved again, and by which edit.
void note(const RailMove& move, const LengthStyle& style, Settlement& settlement) {
    settlement.rails.push_back({move.edit.name, move.text(style), move.by});
    std::vector<SetPart>& parts = settlement.edit.parts;
    std::erase_if(parts, [&](const SetPart& part) { return part.name == move.edit.name; });
    parts.push_back(move.edit);
}

}  // namespace

Settlement settle(const Piece& piece, const Workbench& bench) {
    constexpr int kMostMoves = 4;
    Settlement best = settleEnds(piece, bench);
    const std::size_t before = best.meetingsBefore;
    const std::optional<double> plain = best.weakestByPlainRule;
    Piece moved = piece;
    for (int i = 0; i < kMostMoves && best.meetingsAfter > 0; ++i) {
        std::optional<Settlement> better;
        const RailMove* chosen = nullptr;
        std::vector<RailMove> moves = movesFor(moved, best.edit, bench);
        std::stable_sort(moves.begin(), moves.end(), [](const RailMove& a, const RailMove& b) {
            return a.by < b.by;
        });
        // No rail twice: what it was allowed is used up.
        std::erase_if(moves, [&](const RailMove& move) {
            return std::any_of(best.rails.begin(), best.rails.end(), [&](const SettledRail& rail) {
                return rail.rail == move.edit.name;
            });
        });
        std::size_t tried = best.tried;
        for (const RailMove& move : moves) {
            const Result<Piece> with = apply(moved, move.edit);
            if (!with) {
                continue;
            }
            Settlement one = settleEnds(*with, bench);
            tried += one.tried;
            if (one.meetingsAfter < best.meetingsAfter && (!better || isBetter(one, *better))) {
                better = std::move(one);
                chosen = &move;
            }
        }
        if (chosen == nullptr) {
            best.tried = tried;
            break;
        }
        better->rails = best.rails;
        better->edit.parts = best.edit.parts;
        note(*chosen, piece.style, *better);
        better->tried = tried;
        moved = *apply(moved, chosen->edit);
        best = std::move(*better);
    }
    best.meetingsBefore = before;
    best.weakestByPlainRule = plain;
    return best;
}

std::optional<double> Settlement::gain() const {
    if (!weakest || !weakestByPlainRule || *weakestByPlainRule <= 0.0) {
        return std::nullopt;
    }
    return *weakest / *weakestByPlainRule;
}

}  // namespace shoulderline
