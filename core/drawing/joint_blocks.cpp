#include "core/drawing/joint_blocks.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/fraction_text.h"
#include "core/drawing/joint_captions.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/joint_further.h"
#include "core/drawing/joint_names.h"
#include "core/drawing/joint_twins.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kNameHeight = 3.5;
constexpr double kCaptionHeight = 2.5;
constexpr double kNameRows = 11.0;

constexpr double kOverSetUps = 4.0;

double areaOf(const JointBlock& block) {
    return block.size.x * block.size.y;
}

// How far down a drawing reaches, over each step along it.
class Skyline {
  public:
    Skyline(const std::vector<Op>& ops, double width, const TextMetrics& metrics)
        : downs_(static_cast<std::size_t>(width / kStep) + 1, 0.0) {
        for (const Op& op : ops) {
            if (std::holds_alternative<BeginGroup>(op) || std::holds_alternative<EndGroup>(op)) {
                continue;
            }
            const Rect bounds = boundsOf(std::vector<Op>{op}, metrics);
            for (std::size_t i = at(bounds.min.x); i <= at(bounds.max.x); ++i) {
                downs_[i] = std::max(downs_[i], bounds.max.y);
            }
        }
    }
    // Over the steps from `x` on as wide as `width`, with room kept clear beside it.
    [[nodiscard]] double down(double x, double width) const {
        const auto first = downs_.begin() + static_cast<std::ptrdiff_t>(at(x - kBetweenJoints));
        const auto last = downs_.begin() + static_cast<std::ptrdiff_t>(at(x + width)) + 1;
        return *std::max_element(first, last);
    }
    static constexpr double kStep = 2.0;  // mm

  private:
    [[nodiscard]] std::size_t at(double x) const {
        const double step = std::clamp(x / kStep, 0.0, static_cast<double>(downs_.size() - 1));
        return static_cast<std::size_t>(step);
    }
    std::vector<double> downs_;
};

JointBlock blockOf(const Piece& piece,
                   const ResolvedPiece& resolved,
                   const JointGroup& group,
                   const std::vector<SmallPart>& smalls,
                   double scale,
                   bool areEndsBelow,
                   const TextMetrics& metrics) {
    constexpr DimensionStyle kClose{2.5, 7.0, 6.5};
    Sheet drawing = drawJoint(piece,
                              resolved,
                              group.joints.front(),
                              {scale, kClose, areEndsBelow, group.areMarksAlike},
                              metrics);
    JointBlock block;
    block.scale = scale;
    block.parts = tenonedOf(resolved, group);
    const std::string caption = captionOf(resolved, group, scale);
    const std::string further = furtherSizes(piece, resolved, smalls, group.joints.front());
    constexpr double kWidest = 160.0;  // mm, of a line wider than its drawing
    const double least = std::max(drawing.size.x, metrics.width(caption, kCaptionHeight, false));
    const double wide = std::max(
        least, std::min(kWidest, metrics.width(further, kCaptionHeight, false) + kBetweenJoints));
    std::vector<std::string> under;
    if (!further.empty()) {
        under = wrapText(further, wide, kCaptionHeight, metrics, "   ");
    }
    for (const std::string& note : makersNotes(piece, resolved, group)) {
        for (std::string& line : wrapText("note: " + note, wide, kCaptionHeight, metrics, "   ")) {
            under.push_back(std::move(line));
        }
    }
    constexpr double kRow = 2.0 + kCaptionHeight;
    const double rows = kNameRows + static_cast<double>(under.size()) * kRow;
    block.size = Vec2{wide, drawing.size.y + rows};
    const FittedText name =
        fitText(nameOfGroup(resolved, group), kNameHeight, block.size.x, metrics);
    block.ops.push_back(
        TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
    block.ops.push_back(TextOp{{0.0, kNameHeight + 2.0 + kCaptionHeight},
                               caption,
                               kCaptionHeight,
                               Align::Left,
                               false,
                               false});
    for (std::size_t i = 0; i < under.size(); ++i) {
        const double down = kNameHeight + 2.0 + kCaptionHeight + static_cast<double>(i + 1) * kRow;
        block.ops.push_back(
            TextOp{{0.0, down}, under[i], kCaptionHeight, Align::Left, false, false});
    }
    move(drawing.ops, {0.0, rows});
    append(block.ops, std::move(drawing.ops));
    return block;
}

// How many lines stand in the first of two columns: half of them, up to the end of a sentence.
std::size_t halfOf(const std::vector<std::string>& lines) {
    for (std::size_t i = (lines.size() + 1) / 2; i < lines.size(); ++i) {
        if (lines[i].front() != ' ') {
            return i;
        }
    }
    return (lines.size() + 1) / 2;
}

// The scales that joints are drawn at, the largest first.
std::vector<double> jointScales(Unit unit) {
    std::vector<double> scales = standardScales(unit);
    if (unit == Unit::Inch) {
        std::erase_if(scales, [](double scale) { return std::fmod(1.0 / scale, 10.0) == 5.0; });
    }
    return scales;
}

}  // namespace

std::string setUpsOnSheet(std::size_t number) {
    return "; set-ups on sheet " + std::to_string(number);
}

const std::vector<std::string>& SetUpsTold::within(double width, const TextMetrics& metrics) {
    const auto [lines, isNew] = wrapped.try_emplace(width);
    for (const std::string& one : isNew ? sentences : std::vector<std::string>()) {
        for (std::string& line : wrapText(one, width, kCaptionHeight, metrics, "   ")) {
            lines->second.push_back(std::move(line));
        }
    }
    return lines->second;
}

SetUpsTold& JointBlocks::told(std::size_t group) {
    const auto [told, isNew] = told_.try_emplace(group);
    if (isNew) {
        told->second = {setUpsWithTwins(resolved_, groups_[group]),
                        linesWithTwins(piece_, resolved_, groups_[group]),
                        {}};
    }
    return told->second;
}

// The drawing with the settings under some of it, or beside it, wherever that takes least of the
// room; none where they do not go in.
std::optional<JointBlock> JointBlocks::withSetUps(const JointBlock& drawn,
                                                  std::size_t group,
                                                  Vec2 room) {
    constexpr double kLeastWidth = 74.0;
    constexpr double kStep = 8.0;
    const Skyline skyline(drawn.ops, room.x, metrics_);
    std::optional<Vec2> at;
    Vec2 size;
    std::vector<std::vector<std::string>> text;  // column by column
    double step = 0.0;                           // from one to the next
    std::vector<double> widths{std::max(drawn.size.x, kLeastWidth), room.x};
    for (double width = kLeastWidth; width < room.x; width += kStep) {
        widths.push_back(width);
    }
    const auto place = [&](double width, bool isInTwo) {
        const std::vector<std::string>& lines = told(group).within(width, metrics_);
        const std::size_t first = isInTwo ? halfOf(lines) : lines.size();
        const double height =
            heightOfLines(std::max(first, lines.size() - first), kCaptionHeight) + 1.0;
        const double wide = isInTwo ? 2.0 * width + kBetweenJoints : width;
        bool isHere = false;
        for (double x = 0.0; x + wide <= room.x; x += Skyline::kStep) {
            const Vec2 corner{x, std::max(kNameRows, skyline.down(x, wide) + kOverSetUps)};
            const Vec2 over{std::max(drawn.size.x, x + wide),
                            std::max(drawn.size.y, corner.y + height)};
            const bool goesIn = over.x <= room.x && over.y <= room.y;
            if (goesIn && (!at || over.x * over.y < size.x * size.y - 1e-6)) {
                at = corner;
                isHere = true;
                size = over;
            }
        }
        if (isHere) {
            const auto middle = lines.begin() + static_cast<std::ptrdiff_t>(first);
            text = {{lines.begin(), middle}, {middle, lines.end()}};
            step = width + kBetweenJoints;
        }
    };
    for (const bool isInTwo : {false, true}) {
        for (const double width : widths) {
            if (!isInTwo || !at) {
                place(width, isInTwo);
            }
        }
    }
    if (!at) {
        return std::nullopt;
    }
    JointBlock block = drawn;
    block.setUps = told(group).setUps;
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::vector<Op> ops = linesOfText(text[i], kCaptionHeight);
        move(ops, *at + Vec2{static_cast<double>(i) * step, 0.0});
        append(block.ops, std::move(ops));
    }
    block.size = size;
    return block;
}

// The settings by themselves, where they find no room under the drawing: as many blocks as they
// take.
std::vector<JointBlock> JointBlocks::setUpBlocks(std::size_t group, Vec2 room) {
    constexpr double kTwoColumns = 210.0;
    const double width = room.x >= kTwoColumns ? (room.x - kBetweenJoints) / 2.0 : room.x;
    const std::vector<std::string>& lines = told(group).within(width, metrics_);
    const double head = kNameHeight + kOverSetUps;
    const double each = kLineSpacing * kCaptionHeight;
    const auto most = static_cast<std::size_t>(std::max(1.0, (room.y - head - 1.0) / each));
    std::vector<JointBlock> blocks;
    for (std::size_t from = 0; from < lines.size(); from += most) {
        const std::size_t to = std::min(lines.size(), from + most);
        const std::vector<std::string> some(lines.begin() + static_cast<std::ptrdiff_t>(from),
                                            lines.begin() + static_cast<std::ptrdiff_t>(to));
        JointBlock block;
        block.parts = tenonedOf(resolved_, groups_[group]);
        block.setUps = told(group).setUps;
        const FittedText name = fitText(
            nameOfGroup(resolved_, groups_[group]) + ": set-ups", kNameHeight, width, metrics_);
        block.ops.push_back(
            TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
        std::vector<Op> text = linesOfText(some, kCaptionHeight);
        move(text, {0.0, head});
        append(block.ops, std::move(text));
        block.size = {width, head + heightOfLines(some.size(), kCaptionHeight) + 1.0};
        blocks.push_back(std::move(block));
    }
    return blocks;
}

const JointBlock& JointBlocks::of(std::size_t group, double scale, bool areEndsBelow) {
    const auto [it, isNew] = made_.try_emplace({group, scale, areEndsBelow});
    if (isNew) {
        it->second =
            blockOf(piece_, resolved_, groups_[group], smalls_, scale, areEndsBelow, metrics_);
    }
    return it->second;
}

// Of the two ways to set the pictures out that go into the room the one that takes less of it;
// null where neither does.
const JointBlock* JointBlocks::drawn(std::size_t group, double scale, Vec2 room) {
    const JointBlock* best = nullptr;
    for (const bool areEndsBelow : {false, true}) {
        const JointBlock& block = of(group, scale, areEndsBelow);
        const bool goesIn = block.size.x <= room.x && block.size.y <= room.y;
        if (goesIn && (best == nullptr || areaOf(block) < areaOf(*best))) {
            best = &block;
        }
    }
    return best;
}

// The same with the settings.
std::optional<JointBlock> JointBlocks::drawnAndTold(std::size_t group, double scale, Vec2 room) {
    std::optional<JointBlock> best;
    for (const bool areEndsBelow : {false, true}) {
        std::optional<JointBlock> block = withSetUps(of(group, scale, areEndsBelow), group, room);
        if (block && (!best || areaOf(*block) < areaOf(*best))) {
            best = std::move(block);
        }
    }
    return best;
}

std::vector<JointBlock> JointBlocks::fitted(std::size_t i, Vec2 room) {
    const JointBlock* largest = nullptr;
    for (const double scale : jointScales(piece_.unit)) {
        if (largest == nullptr) {
            largest = drawn(i, scale, room);
        }
        if (largest == nullptr) {
            continue;
        }
        constexpr double kClear = 0.2;  // a drawing as large as this may be smaller for its text
        constexpr double kLeastShare = 0.4;  // from 1 : 2 to 1 : 5
        if (scale < largest->scale * kLeastShare || (scale < largest->scale && scale < kClear)) {
            break;
        }
        if (std::optional<JointBlock> both = drawnAndTold(i, scale, room)) {
            return {*std::move(both)};
        }
    }
    std::vector<JointBlock> blocks{
        largest != nullptr ? *largest : of(i, jointScales(piece_.unit).back(), false)};
    JointBlock& drawing = blocks.front();
    drawing.awaits = i;
    constexpr std::size_t kWidestNumber = 888;
    TextOp& caption = std::get<TextOp>(drawing.ops[kJointCaption]);
    const std::string whole = caption.text + setUpsOnSheet(kWidestNumber);
    const double wide = metrics_.width(whole, kCaptionHeight, false);
    caption.height = kCaptionHeight * std::min(1.0, room.x / wide);
    drawing.size.x = std::min(room.x, std::max(drawing.size.x, wide));
    for (JointBlock& text : setUpBlocks(i, room)) {
        text.tells = i;
        blocks.push_back(std::move(text));
    }
    return blocks;
}

}  // namespace shoulderline
