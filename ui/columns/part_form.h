#pragma once

#include <QGridLayout>
#include <QWidget>
#include <functional>
#include <string>
#include <vector>

#include "ui/document/document.h"

namespace shoulderline {

class Prompts;

// What the maker states of one part, each statement with its field: name, role, stock, section,
// the relation that places it, and its spacing.
class PartForm final : public QWidget {
    Q_OBJECT
  public:
    PartForm(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    // Shows the stated part of this index.
    void show(std::size_t stated);

  private:
    using Text = std::function<Statement&(Part&)>;
    using Change = std::function<void(Part&)>;

    void rebuild(const Part& part);
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
    void addCut(bool isBore, std::size_t index);
    // A heading with one command at its right.
    void addHeading(const QString& title,
                    const QString& command,
                    std::function<void(QWidget&)> act);
    template <class Word>
    void addWord(const QString& label, std::function<Word&(Part&)> word);
    // What of shape and cuts decides which rows there are.
    [[nodiscard]] static std::string shapeKey(const Part& part);
    void addName();
    void addStatement(const QString& label,
                      Dimension dimension,
                      bool mayBeEmpty,
                      Text text,
                      const QString& whenEmpty = {});
    void addChoice(const QString& label,
                   const QStringList& choices,
                   std::function<QString(const Part&)> now,
                   std::function<void(Part&, const QString&)> choose);
    void addReference(const QString& label, Text text);
    void addSide(const QString& label, std::function<Side&(Part&)> side);
    void addCheck(const QString& label, std::function<bool&(Part&)> flag);
    void addRow(const QString& label, QWidget* field);
    Result<void> change(const Change& change, Document::Kind kind = Document::Kind::Whole);
    void changeOrTell(const Change& change);
    [[nodiscard]] const Part* part() const;
    [[nodiscard]] QStringList referenceNames() const;
    [[nodiscard]] static QStringList sideWords();

    Document& document_;
    Prompts& prompts_;
    QGridLayout* grid_;
    std::vector<std::function<void(const Part&)>> refreshers_;
    std::size_t stated_ = 0;
    std::string rows_;  // which the form has: rebuilt when others are wanted
};

}  // namespace shoulderline
