#pragma once

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/expression.h"
#include "ui/columns/focus_place.h"
#include "ui/columns/section.h"
#include "ui/document/document.h"
#include "ui/fields/choice_box.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

// A form for one stated thing (a part, an assembly): rows of a name and a field each, every field a
// statement, a choice or a mark of it. A change goes to the document as one edit; rows follow what
// is stated. Who derives from it says which thing it is and how a change is applied.
template <class Thing>
class FormRows : public QWidget {
  protected:
    using Text = std::function<Statement&(Thing&)>;
    using Change = std::function<void(Thing&)>;

    // `kind` goes before the names that fields have for a screen reader: "part: width".
    FormRows(Document& document, Prompts& prompts, QString kind, QWidget* parent)
        : QWidget(parent), document_(document), prompts_(prompts), kind_(std::move(kind)) {
        grid_ = new QGridLayout(this);
        grid_->setContentsMargins(0, 0, 0, 0);
        grid_->setHorizontalSpacing(8);
        grid_->setVerticalSpacing(3);
        grid_->setColumnStretch(0, 1);
    }

    virtual Result<void> change(const Change& change,
                                Document::Kind kind = Document::Kind::Whole) = 0;

    void changeOrTell(const Change& one) {
        if (const Result<void> done = change(one); !done) {
            prompts_.tell(this, qt(done.error().message));
        }
    }

    // Makes all rows anew by `make`. What had the focus has it again: the field of the same name,
    // or what now stands where it stood; Tab goes through the rows from there.
    template <class Make>
    void remakeRows(const Thing& thing, const Make& make) {
        const std::optional<FocusPlace> place = focusPlaceIn(*this);
        clearLayout(*grid_);
        refreshers_.clear();
        make();
        refreshRows(thing);
        chainFocus(*this);
        giveFocus(*this, place);
    }
    void refreshRows(const Thing& thing) {
        for (const auto& refresh : refreshers_) {
            refresh(thing);
        }
    }

    // `text` may make what it points at, as on a copy whose row is about to go.
    StatementField& addStatement(const QString& label,
                                 Dimension dimension,
                                 bool mayBeEmpty,
                                 Text text,
                                 const QString& whenEmpty = {}) {
        auto* field = new StatementField(
            document_,
            dimension,
            [this, text](const std::string& statement, Document::Kind kind) {
                return change([&](Thing& t) { text(t) = statement; }, kind);
            },
            this);
        field->setMayBeEmpty(mayBeEmpty);
        field->setPlaceholderText(whenEmpty);
        addRow(label, field);
        refreshers_.push_back([this, field, text](const Thing& thing) {
            Thing copy = thing;
            const Statement statement = text(copy);
            field->setStatement(statement);
            const Result<Expression> expression =
                Expression::parse(statement, document_.piece().unit);
            field->setStateWord(expression && !expression->names().empty() ? QStringLiteral("ƒ")
                                                                           : QString());
        });
        return *field;
    }

    void addChoice(const QString& label,
                   const QStringList& choices,
                   std::function<QString(const Thing&)> now,
                   std::function<void(Thing&, const QString&)> choose) {
        auto* box = new ChoiceBox(this);
        box->addItems(choices);
        addRow(label, box);
        connect(box, &QComboBox::textActivated, this, [this, choose](const QString& word) {
            changeOrTell([&](Thing& t) { choose(t, word); });
        });
        refreshers_.push_back([box, now = std::move(now)](const Thing& thing) {
            const QString word = now(thing);
            if (box->findText(word) < 0) {
                box->addItem(word);
            }
            box->setCurrentText(word);
        });
    }

    // All parts, of pairs also each hand.
    [[nodiscard]] QStringList referenceNames() const {
        QStringList names;
        for (const Part& other : document_.piece().parts) {
            names << qt(other.name);
            if (other.pair) {
                names << qt(other.name) + QStringLiteral(", left")
                      << qt(other.name) + QStringLiteral(", right");
            }
        }
        return names;
    }

    void addReference(const QString& label, Text text) {
        addChoice(
            label,
            referenceNames(),
            [text](const Thing& thing) {
                Thing copy = thing;
                return qt(text(copy));
            },
            [text](Thing& thing, const QString& word) { text(thing) = utf8(word); });
    }

    // A plain text, such as a name.
    void addText(const QString& label, std::function<std::string&(Thing&)> text) {
        auto* field = new QLineEdit(this);
        addRow(label, field);
        connect(field, &QLineEdit::editingFinished, this, [this, field, text] {
            if (!field->isModified()) {
                return;
            }
            field->setModified(false);
            changeOrTell([&](Thing& t) { text(t) = utf8(field->text().simplified()); });
            if (const Thing* now = thing()) {
                Thing copy = *now;
                field->setText(qt(text(copy)));
            }
        });
        refreshers_.push_back([field, text](const Thing& thing) {
            if (!field->isModified()) {
                Thing copy = thing;
                field->setText(qt(text(copy)));
            }
        });
    }

    void addCheck(const QString& label, std::function<bool&(Thing&)> flag) {
        auto* box = new QCheckBox(label, this);
        grid_->addWidget(box, grid_->rowCount(), 0, 1, 2);
        box->show();
        connect(box, &QCheckBox::clicked, this, [this, flag](bool isOn) {
            changeOrTell([&](Thing& t) { flag(t) = isOn; });
        });
        refreshers_.push_back([box, flag](const Thing& thing) {
            Thing copy = thing;
            box->setChecked(flag(copy));
        });
    }

    // A heading with one command at its right.
    void addHeading(const QString& title,
                    const QString& command,
                    std::function<void(QWidget&)> act) {
        auto* heading = new SectionHeading(title, this);
        TextButton* button =
            heading->addCommand(command, QStringLiteral("%1: %2").arg(title, command));
        connect(
            button, &TextButton::clicked, this, [button, act = std::move(act)] { act(*button); });
        grid_->addWidget(heading, grid_->rowCount(), 0, 1, 2);
        heading->show();
    }

    void addRow(const QString& label, QWidget* field) {
        constexpr int kFieldWidth = 142;
        auto* name = new QLabel(label, this);
        name->setBuddy(field);
        field->setAccessibleName(QStringLiteral("%1: %2").arg(kind_, label));
        field->setFixedWidth(kFieldWidth);
        const int row = grid_->rowCount();
        grid_->addWidget(name, row, 0);
        grid_->addWidget(field, row, 1);
        name->show();
        field->show();
    }

    // What is stated now; null where it is gone.
    [[nodiscard]] virtual const Thing* thing() const = 0;

    Document& document_;
    Prompts& prompts_;
    QGridLayout* grid_;

  private:
    QString kind_;
    std::vector<std::function<void(const Thing&)>> refreshers_;
};

}  // namespace shoulderline
