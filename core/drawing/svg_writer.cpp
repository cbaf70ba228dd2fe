#include "core/drawing/svg_writer.h"

#include <array>
#include <charconv>
#include <cmath>
#include <string_view>

#include "core/drawing/dashes.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/fraction_text.h"
#include "core/drawing/lettering_widths.h"
#include "core/drawing/overloaded.h"
#include "core/drawing/svg_font.h"

namespace shoulderline {

namespace {

constexpr std::size_t kRoles = static_cast<std::size_t>(LineRole::Border) + 1;  // the last
constexpr std::size_t kSolid = kRoles;
constexpr std::size_t kLettering = kRoles + 1;
constexpr std::size_t kLayers = kRoles + 2;
constexpr double kFullTurn = 360.0 - 1e-9;

std::string number(double value) {
    std::array<char, 48> buffer{};
    const auto [end, error] = std::to_chars(
        buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, 3);
    std::string text(buffer.data(), error == std::errc() ? end : buffer.data());
    text.erase(text.find_last_not_of('0') + 1);
    if (!text.empty() && text.back() == '.') {
        text.pop_back();
    }
    return text == "-0" || text.empty() ? "0" : text;
}

std::string pair(Vec2 p) {
    return number(p.x) + " " + number(p.y);
}

// XML has no way to write most control characters: they are left out.
std::string escaped(std::string_view text) {
    std::string result;
    for (const char c : text) {
        switch (c) {
            case '&':
                result += "&amp;";
                break;
            case '<':
                result += "&lt;";
                break;
            case '>':
                result += "&gt;";
                break;
            case '"':
                result += "&quot;";
                break;
            default:
                if (static_cast<unsigned char>(c) >= 0x20) {
                    result += c;
                }
        }
    }
    return result;
}

std::string_view kindName(SubjectKind kind) {
    switch (kind) {
        case SubjectKind::None:
            return "words";
        case SubjectKind::Part:
            return "part";
        case SubjectKind::Joint:
            return "joint";
        case SubjectKind::Finding:
            return "finding";
        case SubjectKind::RodLine:
            return "rod-line";
        case SubjectKind::Dimension:
            return "dimension-of";
    }
    return "";
}

// Collects a sheet's ops by layer; each layer opens a group where its subject changes.
class LayerMaker {
  public:
    LayerMaker(const Sheet& sheet, Vec2 shift, const Rect& reach, const TextMetrics& metrics)
        : sheet_(sheet), shift_(shift), reach_(reach), metrics_(metrics) {
        for (const Op& op : sheet.ops) {
            add(op);
        }
    }

    // All layers that hold anything, as groups whose ids begin with `prefix`.
    [[nodiscard]] std::string text(const std::string& prefix) const {
        std::string result;
        for (std::size_t i = 0; i < kLayers; ++i) {
            if (!layers_[i].content.empty()) {
                result += opening(i, prefix) + layers_[i].content +
                          (layers_[i].group == 0 ? "" : "</g>\n") + "</g>\n";
            }
        }
        return result;
    }

  private:
    struct Layer {
        std::string content;
        std::size_t group = 0;  // that is open in it, as an index in groups_ + 1; 0 for none
    };

    [[nodiscard]] std::string opening(std::size_t layer, const std::string& prefix) const {
        std::string name = "lettering";
        std::string style = " fill=\"black\" stroke=\"none\"";
        if (layer == kSolid) {
            name = "solid";
        } else if (layer < kRoles) {
            const auto role = static_cast<LineRole>(layer);
            const LineStyle line = lineStyle(role, sheet_.lines);
            const bool isRound = line.type == LineType::Continuous && role != LineRole::Dimension;
            name = layerName(role);
            style = " fill=\"none\" stroke=\"black\" stroke-width=\"" + number(line.width) +
                    "\" stroke-linejoin=\"round\" stroke-linecap=\"" +
                    (isRound ? "round" : "butt") + "\"";
        } else {
            style += " font-family=\"'" + std::string(kLetteringFamily) +
                     "', sans-serif\" font-kerning=\"none\" xml:space=\"preserve\"";
        }
        return "<g id=\"" + prefix + name + "\" class=\"layer " + name + "\"" + style +
               ">\n<title>" + name + "</title>\n";
    }

    void add(const Op& op) {
        std::visit(Overloaded{
                       [&](const Stroke& stroke) { line(stroke); },
                       [&](const Fill& fill) {
                           if (!fill.tint) {
                               area(fill, kSolid);
                           }
                       },
                       [&](const ArcOp& arc) { curve(arc); },
                       [&](const TextOp& text) { lettering(text); },
                       [&](const DimensionOp& dimension) {
                           const DimensionParts parts = partsOf(dimension, metrics_);
                           for (const Stroke& stroke : parts.strokes) {
                               line(stroke);
                           }
                           for (const Fill& arrow : parts.arrows) {
                               area(arrow, static_cast<std::size_t>(LineRole::Dimension));
                           }
                           lettering(parts.figure);
                       },
                       [&](const BeginGroup& group) {
                           groups_.push_back(&group);
                           open_.push_back(groups_.size());
                       },
                       [&](const EndGroup&) {
                           if (!open_.empty()) {
                               open_.pop_back();
                           }
                       },
                   },
                   op);
    }

    void put(std::size_t layer, const std::string& element) {
        Layer& into = layers_[layer];
        const std::size_t group = open_.empty() ? 0 : open_.back();
        if (into.group != group) {
            into.content += into.group == 0 ? "" : "</g>\n";
            if (group != 0) {
                const BeginGroup& begun = *groups_[group - 1];
                into.content += "<g class=\"" + std::string(kindName(begun.subject.kind)) +
                                "\"><title>" + escaped(begun.name) + "</title>\n";
            }
            into.group = group;
        }
        into.content += element + "\n";
    }

    [[nodiscard]] bool reaches(Vec2 a, Vec2 b) const {
        constexpr double kLineWidth = 1.0;
        return std::max(a.x, b.x) >= reach_.min.x - kLineWidth &&
               std::min(a.x, b.x) <= reach_.max.x + kLineWidth &&
               std::max(a.y, b.y) >= reach_.min.y - kLineWidth &&
               std::min(a.y, b.y) <= reach_.max.y + kLineWidth;
    }

    void line(const Stroke& stroke) {
        const LineStyle style = lineStyle(stroke.role, sheet_.lines);
        std::string path;
        Vec2 last;
        for (const DrawnLine& drawn : drawnLines(stroke.points, style)) {
            const Vec2 a = drawn.a + shift_;
            const Vec2 b = drawn.b + shift_;
            if (!reaches(a, b)) {
                continue;
            }
            const bool goesOn = !path.empty() && norm(a - last) < 1e-9;
            path += goesOn ? " L" + pair(b) : "M" + pair(a) + " L" + pair(b);
            last = b;
        }
        if (!path.empty()) {
            put(static_cast<std::size_t>(stroke.role), "<path d=\"" + path + "\"/>");
        }
    }

    void area(const Fill& fill, std::size_t layer) {
        std::string path;
        bool isInReach = false;
        for (const Vec2& p : fill.points) {
            path += (path.empty() ? "M" : " L") + pair(p + shift_);
            isInReach = isInReach || reaches(p + shift_, p + shift_);
        }
        if (isInReach) {
            put(layer, "<path fill=\"black\" stroke=\"none\" d=\"" + path + " Z\"/>");
        }
    }

    void curve(const ArcOp& arc) {
        const LineStyle style = lineStyle(arc.role, sheet_.lines);
        const Vec2 centre = arc.centre + shift_;
        const Vec2 reach{arc.radius, arc.radius};
        if (!reaches(centre - reach, centre + reach)) {
            return;
        }
        const auto layer = static_cast<std::size_t>(arc.role);
        if (style.type == LineType::Continuous && std::abs(arc.sweep.degrees()) >= kFullTurn) {
            put(layer,
                "<circle cx=\"" + number(centre.x) + "\" cy=\"" + number(centre.y) + "\" r=\"" +
                    number(arc.radius) + "\"/>");
            return;
        }
        const double way = arc.sweep.radians() < 0.0 ? -1.0 : 1.0;
        const auto at = [&](double along) {
            const double angle = arc.start.radians() + way * along / arc.radius;
            return centre + Vec2{std::cos(angle), std::sin(angle)} * arc.radius;
        };
        std::string path;
        const std::string radii = number(arc.radius) + " " + number(arc.radius);
        for (const DrawnStretch& stretch :
             drawnStretches(std::abs(arc.sweep.radians()) * arc.radius, style)) {
            // An arc of SVG says nothing at half a turn and more: two halves always do.
            const std::string flags = way > 0.0 ? " 0 0 1 " : " 0 0 0 ";
            path += "M" + pair(at(stretch.from)) + " A" + radii + flags +
                    pair(at((stretch.from + stretch.to) / 2.0)) + " A" + radii + flags +
                    pair(at(stretch.to));
        }
        put(layer, "<path d=\"" + path + "\"/>");
    }

    // Every character at its own place: readers that kern would set them otherwise than the layout
    // and the other painters do.
    [[nodiscard]] std::string characters(const TextRun& run, double from) const {
        std::string content;
        for (std::size_t at = 0; at < run.text.size();) {
            std::size_t end = at + 1;
            while (end < run.text.size() &&
                   (static_cast<unsigned char>(run.text[end]) & 0xC0) == 0x80) {
                ++end;
            }
            const double x = from + metrics_.width(run.text.substr(0, at), run.height, false);
            content += "<tspan x=\"" + number(x) + "\">" + escaped(run.text.substr(at, end - at)) +
                       "</tspan>";
            at = end;
        }
        return content;
    }

    void lettering(const TextOp& text) {
        const TextLayout layout = layOutText(text.text, text.height, text.isBold, metrics_);
        const double shift =
            text.align == Align::Left
                ? 0.0
                : (text.align == Align::Centre ? -layout.width / 2.0 : -layout.width);
        const Vec2 start = text.at + shift_;
        const Vec2 along = text.isTurned ? Vec2{0.0, -1.0} : Vec2{1.0, 0.0};
        if (!reaches(start + along * shift, start + along * (shift + layout.width))) {
            return;
        }
        // Local coordinates: the baseline's start at (0, 0).
        std::string content;
        for (const TextRun& run : layout.runs) {
            const double size = run.height * kUnitsPerEm / kCapHeightUnits;
            for (const double bold : {0.0, kBoldShift * run.height}) {
                if (bold == 0.0 || text.isBold) {
                    content += "<text y=\"" + number(run.at.y) + "\" font-size=\"" + number(size) +
                               "\"" + (bold > 0.0 ? " aria-hidden=\"true\">" : ">") +
                               characters(run, run.at.x + bold) + "</text>";
                }
            }
        }
        for (const FractionBar& bar : layout.bars) {
            content += "<path stroke=\"black\" stroke-width=\"" +
                       number(0.1 * text.height * kFractionFigure) + "\" d=\"M" + pair(bar.a) +
                       " L" + pair(bar.b) + "\"/>";
        }
        put(kLettering,
            "<g aria-label=\"" + escaped(text.text) + "\" transform=\"translate(" + pair(start) +
                ")" + (text.isTurned ? " rotate(-90)" : "") + " translate(" + number(shift) +
                " 0)\">" + content + "</g>");
    }

    const Sheet& sheet_;
    Vec2 shift_;
    Rect reach_;
    const TextMetrics& metrics_;
    std::array<Layer, kLayers> layers_;
    std::vector<const BeginGroup*> groups_;
    std::vector<std::size_t> open_;  // indices in groups_ + 1
};

std::string document(Vec2 size,
                     const std::string& title,
                     std::string_view fontFile,
                     const std::string& content) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" +
           number(size.x) + "mm\" height=\"" + number(size.y) + "mm\" viewBox=\"0 0 " +
           number(size.x) + " " + number(size.y) + "\">\n<title>" + escaped(title) + "</title>\n" +
           embeddedFont(fontFile) + content + "</svg>\n";
}

}  // namespace

std::string layerName(LineRole role) {
    switch (role) {
        case LineRole::Visible:
            return "visible";
        case LineRole::Narrow:
            return "visible-narrow";
        case LineRole::Hidden:
            return "hidden";
        case LineRole::Centre:
            return "centre";
        case LineRole::Dimension:
            return "dimension";
        case LineRole::CutPlane:
            return "cut-plane";
        case LineRole::Construction:
            return "construction";
        case LineRole::Neighbour:
            return "neighbour";
        case LineRole::Border:
            return "border";
    }
    return "";
}

std::string svgOf(const Sheet& sheet, const TextMetrics& metrics, std::string_view fontFile) {
    const LayerMaker layers(sheet, {0, 0}, {{0, 0}, sheet.size}, metrics);
    return document(sheet.size, sheet.title, fontFile, layers.text({}));
}

std::string svgOf(const PrintJob& job,
                  const Page& page,
                  const TextMetrics& metrics,
                  std::string_view fontFile) {
    const Vec2 min = page.printable.min;
    const Vec2 size = page.printable.max - min;
    const Sheet& content = job.contents[page.content];
    const bool isTurned = page.turn != Angle();
    const LayerMaker drawing(content,
                             isTurned ? Vec2{} : min - page.origin,
                             isTurned ? Rect{{0, 0}, content.size} : Rect{min, page.printable.max},
                             metrics);
    const LayerMaker furniture(page.furniture, {0, 0}, {{0, 0}, page.size}, metrics);
    const std::string clip = "<clipPath id=\"printable\"><rect x=\"" + number(min.x) + "\" y=\"" +
                             number(min.y) + "\" width=\"" + number(size.x) + "\" height=\"" +
                             number(size.y) + "\"/></clipPath>\n";
    std::string drawn = drawing.text({});
    if (isTurned) {
        drawn = "<g transform=\"translate(" + pair(page.onPage({0, 0})) + ") rotate(" +
                number(page.turn.degrees()) + ")\">\n" + drawn + "</g>\n";
    }
    const std::string title = page.name.empty() ? job.title : job.title + ": " + page.name;
    return document(page.size,
                    title,
                    fontFile,
                    clip + "<g clip-path=\"url(#printable)\">\n" + drawn + "</g>\n" +
                        furniture.text("furniture-"));
}

}  // namespace shoulderline
