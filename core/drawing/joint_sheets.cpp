#include "core/drawing/joint_sheets.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_blocks.h"
#include "core/drawing/joint_twins.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kRoundJoints = 4.0;

// What to mind at the tools, at the foot of a sheet.
class Cautions {
  public:
    Cautions(const std::vector<SetUp>& setUps,
             const ResolvedPiece& resolved,
             double width,
             const TextMetrics& metrics) {
        for (const std::string& one : cautionsFor(setUps, resolved.rules)) {
            for (std::string& line : wrapText(one, width, kHeight, metrics, "   ")) {
                lines_.push_back(std::move(line));
            }
        }
    }
    [[nodiscard]] double height() const {
        return lines_.empty() ? 0.0 : kOver + heightOfLines(lines_.size(), kHeight);
    }
    // With its foot at `bottom`.
    [[nodiscard]] std::vector<Op> ops(Vec2 bottom) const {
        std::vector<Op> ops = linesOfText(lines_, kHeight);
        move(ops, bottom - Vec2{0.0, heightOfLines(lines_.size(), kHeight)});
        return ops;
    }

  private:
    static constexpr double kHeight = 1.8;  // as the captions of the title block
    static constexpr double kOver = 4.0;
    std::vector<std::string> lines_;
};

// Blocks on shelves, each on the first that has room for it, the highest first; a new sheet where
// none has. At the foot of each sheet is kept free what its cautions take.
class Layout {
  public:
    Layout(Vec2 room, const ResolvedPiece& resolved, const TextMetrics& metrics)
        : room_(room), resolved_(resolved), metrics_(metrics) {}

    void add(JointBlock block) {
        Shelf& shelf = shelfFor(block);
        move(block.ops, {shelf.x, shelf.y});
        shelf.x += block.size.x + kBetweenJoints;
        JointsOnSheet& sheet = sheets_[shelf.sheet];
        for (std::string& part : block.parts) {
            if (std::find(sheet.parts.begin(), sheet.parts.end(), part) == sheet.parts.end()) {
                sheet.parts.push_back(std::move(part));
            }
        }
        if (block.awaits) {
            sheet.awaiting.push_back({*block.awaits, sheet.ops.size() + kJointCaption});
        }
        sheet.hasDrawings = sheet.hasDrawings || block.scale > 0.0;
        if (block.tells) {
            sheet.told.push_back(*block.tells);
        }
        append(sheet.ops, std::move(block.ops));
        sheet.setUps.insert(sheet.setUps.end(), block.setUps.begin(), block.setUps.end());
    }
    [[nodiscard]] std::vector<JointsOnSheet> take() { return std::move(sheets_); }

  private:
    struct Shelf {
        std::size_t sheet = 0;
        double x = 0.0;
        double y = 0.0;
        double height = 0.0;
    };

    // How far down the blocks of a sheet may reach that tells of `more` too.
    [[nodiscard]] double floorWith(const JointsOnSheet& sheet,
                                   const std::vector<SetUp>& more) const {
        std::vector<SetUp> all = sheet.setUps;
        all.insert(all.end(), more.begin(), more.end());
        constexpr double kHair = 1e-9;
        return room_.y + kHair - Cautions(all, resolved_, room_.x, metrics_).height();
    }

    [[nodiscard]] Shelf& shelfFor(const JointBlock& block) {
        constexpr double kHair = 1e-9;
        const Vec2 size = block.size;
        for (Shelf& shelf : shelves_) {
            if (shelf.height >= size.y - kHair && shelf.x + size.x <= room_.x + kHair &&
                used_[shelf.sheet] - kBetweenJoints <=
                    floorWith(sheets_[shelf.sheet], block.setUps)) {
                return shelf;
            }
        }
        for (std::size_t i = 0; i < used_.size(); ++i) {
            if (used_[i] + size.y <= floorWith(sheets_[i], block.setUps)) {
                shelves_.push_back({i, 0.0, used_[i], size.y});
                used_[i] += size.y + kBetweenJoints;
                return shelves_.back();
            }
        }
        shelves_.push_back({sheets_.size(), 0.0, 0.0, size.y});
        sheets_.emplace_back();
        used_.push_back(size.y + kBetweenJoints);
        return shelves_.back();
    }

    Vec2 room_;
    const ResolvedPiece& resolved_;
    const TextMetrics& metrics_;
    std::vector<Shelf> shelves_;
    std::vector<double> used_;  // height of each sheet that is taken
    std::vector<JointsOnSheet> sheets_;
};

Vec2 roomForJoints(Vec2 paper) {
    return drawingSpace(paper).size() - Vec2{2.0 * kRoundJoints, 2.0 * kRoundJoints};
}

// Tells apart those that would have one title.
void numberAlike(std::vector<JointsOnSheet>& sheets) {
    std::map<std::string, std::vector<std::size_t>> byTitle;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        byTitle[titleOf(sheets[i])].push_back(i);
    }
    for (const auto& [title, alike] : byTitle) {
        for (std::size_t k = 0; k < alike.size() && alike.size() > 1; ++k) {
            sheets[alike[k]].which =
                ", " + std::to_string(k + 1) + " of " + std::to_string(alike.size());
        }
    }
}

// Those of one part after one another: next to a sheet comes the first that shows a part of it.
std::vector<JointsOnSheet> byParts(std::vector<JointsOnSheet> sheets) {
    std::vector<JointsOnSheet> ordered;
    while (!sheets.empty()) {
        const auto sharesPart = [&](const JointsOnSheet& sheet) {
            const std::vector<std::string>& last = ordered.back().parts;
            return std::any_of(sheet.parts.begin(), sheet.parts.end(), [&](const auto& part) {
                return std::find(last.begin(), last.end(), part) != last.end();
            });
        };
        auto next = ordered.empty() ? sheets.begin()
                                    : std::find_if(sheets.begin(), sheets.end(), sharesPart);
        next = next == sheets.end() ? sheets.begin() : next;
        ordered.push_back(std::move(*next));
        sheets.erase(next);
    }
    return ordered;
}

struct LaidOut {
    std::vector<JointsOnSheet> sheets;
    double scales = 0.0;  // of all drawings, their sum
};

LaidOut laidOut(const ResolvedPiece& resolved,
                const std::vector<JointGroup>& groups,
                Vec2 paper,
                const TextMetrics& metrics,
                JointBlocks& drawn) {
    const Vec2 room = roomForJoints(paper);
    std::vector<JointBlock> blocks;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const Cautions own(setUpsWithTwins(resolved, groups[i]), resolved, room.x, metrics);
        for (JointBlock& block : drawn.fitted(i, room - Vec2{0.0, own.height()})) {
            blocks.push_back(std::move(block));
        }
    }
    std::stable_sort(blocks.begin(), blocks.end(), [](const JointBlock& a, const JointBlock& b) {
        return a.size.y > b.size.y;
    });
    LaidOut out;
    Layout layout(room, resolved, metrics);
    for (JointBlock& block : blocks) {
        out.scales += block.scale;
        layout.add(std::move(block));
    }
    out.sheets = byParts(layout.take());
    numberAlike(out.sheets);
    return out;
}

// How large, and with how much beside one another, drawings stand: their scales for each sheet.
double drawnToASheet(const LaidOut& out) {
    return out.scales / static_cast<double>(std::max<std::size_t>(1, out.sheets.size()));
}

Sheet sheetOf(const Piece& piece,
              const ResolvedPiece& resolved,
              JointsOnSheet filled,
              const SheetFrame& frame,
              const TextMetrics& metrics) {
    Sheet sheet;
    sheet.title = titleOf(filled);
    TitleBlock block = titleBlock(sheet.title, piece, frame);
    block.material = "see the list of parts";
    block.sizeCaption = "";
    block.scale = "as noted";
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    sheet.ops = frameAndTitle(frame.paper, block, metrics);
    const Rect space = drawingSpace(frame.paper);
    move(filled.ops, space.min + Vec2{kRoundJoints, kRoundJoints});
    append(sheet.ops, std::move(filled.ops));
    const Cautions cautions(filled.setUps, resolved, roomForJoints(frame.paper).x, metrics);
    append(sheet.ops, cautions.ops({space.min.x + kRoundJoints, space.max.y - kRoundJoints}));
    return sheet;
}

// Under the name of each drawing whose settings stand on another sheet, on which; `first` is the
// number of the first of `sheets`.
void sayWhereSetUpsAre(std::size_t first, std::vector<JointsOnSheet>& sheets) {
    std::map<std::size_t, std::size_t> numbers;  // by group
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        for (const std::size_t group : sheets[i].told) {
            numbers.emplace(group, first + i);
        }
    }
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        for (const JointsOnSheet::Awaiting& one : sheets[i].awaiting) {
            const auto told = numbers.find(one.group);
            if (told != numbers.end() && told->second != first + i) {
                std::get<TextOp>(sheets[i].ops[one.caption]).text += setUpsOnSheet(told->second);
            }
        }
    }
}

}  // namespace

std::string titleOf(const JointsOnSheet& filled) {
    std::string title = filled.hasDrawings ? "joints of " : "set-ups for ";
    // Three names; what is over is counted, so that the title stays in its block and in the index.
    constexpr std::size_t kNamed = 3;
    const std::size_t over = filled.parts.size() > kNamed + 1 ? filled.parts.size() - kNamed : 0;
    for (std::size_t i = 0; i + over < filled.parts.size(); ++i) {
        title += (i == 0 ? "" : "; ") + filled.parts[i];
    }
    if (over > 0) {
        title += " and " + std::to_string(over) + " more";
    }
    return title + filled.which;
}

JointsSetOut setOutJoints(const Piece& piece,
                          const ResolvedPiece& resolved,
                          Vec2 paper,
                          const TextMetrics& metrics) {
    const std::vector<JointGroup> groups =
        drawnOnce(piece, resolved, jointGroups(resolved), metrics);
    JointBlocks drawn(piece, resolved, groups, metrics);
    const Vec2 turned{paper.y, paper.x};
    LaidOut held = laidOut(resolved, groups, paper, metrics, drawn);
    LaidOut other = laidOut(resolved, groups, turned, metrics, drawn);
    constexpr double kAlike = 0.1;  // of the scales: smaller drawings are no price for paper
    const double larger = held.scales > 0.0 ? other.scales / held.scales : 1.0;
    constexpr double kHair = 1e-9;
    const bool isMore = drawnToASheet(other) > drawnToASheet(held) + kHair;
    if (larger > 1.0 + kAlike || (larger > 1.0 - kAlike && isMore)) {
        return {turned, std::move(other.sheets)};
    }
    return {paper, std::move(held.sheets)};
}

std::vector<Sheet> jointSheets(const Piece& piece,
                               const ResolvedPiece& resolved,
                               JointsSetOut setOut,
                               SheetFrame frame,
                               const TextMetrics& metrics) {
    frame.paper = setOut.paper;
    if (frame.number > 0) {
        sayWhereSetUpsAre(static_cast<std::size_t>(frame.number), setOut.sheets);
    }
    std::vector<Sheet> sheets;
    for (JointsOnSheet& one : setOut.sheets) {
        sheets.push_back(sheetOf(piece, resolved, std::move(one), frame, metrics));
        frame.number += frame.number > 0 ? 1 : 0;
    }
    return sheets;
}

std::vector<Sheet> jointSheets(const Piece& piece,
                               const ResolvedPiece& resolved,
                               const SheetFrame& frame,
                               const TextMetrics& metrics) {
    return jointSheets(
        piece, resolved, setOutJoints(piece, resolved, frame.paper, metrics), frame, metrics);
}

}  // namespace shoulderline
