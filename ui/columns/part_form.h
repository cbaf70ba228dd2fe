#pragma once

#include <functional>
#include <string>

#include "ui/columns/form_rows.h"

namespace shoulderline {

// What the maker states of one part, each statement with its field: name, role, stock, section,
// the relation that places it, and its spacing.
class PartForm final : public FormRows<Part> {
    Q_OBJECT
  public:
    PartForm(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    // Shows the stated part of this index.
    void show(std::size_t stated);

  private:
    void addRows(const Part& part);
    void addStands();
    void addSpans();
    void addOtherLevel();
    void addFills();
    void addCaps(const Caps& caps);
    void addFree();
    void addSpacing();
    void addShape(const Part& part);
    void addPoint(Face face, std::size_t index, const ShapedEdge& points);
    void addBend(const Part& part);
    void addBow(const Bend& bend);
    void addCuts(const Part& part);
    void addCut(CutKind kind, std::size_t index);
    void addTilt(std::size_t index);
    void addScrewHole(const CutStatement& cut, std::size_t index);
    void addEasings(const Part& part);
    void addEasing(const EasingStatement& easing, std::size_t index);
    // A choice among all words of a kind.
    template <class Word>
    void addWord(const QString& label, std::function<Word&(Part&)> word) {
        QStringList texts;
        for (const Word each : allWords<Word>()) {
            texts << qt(wordFor(each));
        }
        addChoice(
            label,
            texts,
            [word](const Part& part) {
                Part copy = part;
                return qt(wordFor(word(copy)));
            },
            [word](Part& part, const QString& text) {
                word(part) = fromWord<Word>(utf8(text)).value_or(word(part));
            });
    }
    // What of shape, cuts and easings decides which rows there are.
    [[nodiscard]] static std::string shapeKey(const Part& part);
    void addSide(const QString& label, std::function<Side&(Part&)> side);
    Result<void> change(const Change& change, Document::Kind kind = Document::Kind::Whole) override;
    [[nodiscard]] const Part* thing() const override;
    [[nodiscard]] static QStringList sideWords();

    std::size_t stated_ = 0;
    std::string rows_;  // which the form has: rebuilt when others are wanted
};

}  // namespace shoulderline
