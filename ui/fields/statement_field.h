#pragma once

#include <functional>
#include <string>

#include "core/measure/length_text.h"
#include "core/measure/value.h"
#include "ui/document/document.h"
#include "ui/fields/measure_field.h"

namespace shoulderline {

// A field for one statement of the piece. At rest it shows what the statement comes to; with the
// focus, the statement itself where it is an expression of measures.
class StatementField final : public MeasureField {
    Q_OBJECT
  public:
    // Takes a new statement over; `kind` says whether it is one step of a burst.
    using Commit = std::function<Result<void>(const std::string& statement, Document::Kind kind)>;

    StatementField(Document& document,
                   Dimension dimension,
                   Commit commit,
                   QWidget* parent = nullptr);

    // The statement as it stands. `resting`, where not empty, is the figure shown at rest whatever
    // is stated: what a rule gives, or a rule with an offset.
    void setStatement(const std::string& statement, const std::string& resting = {});
    void setDimension(Dimension dimension) { dimension_ = dimension; }
    // Whether the field may be emptied, which goes back to the rule; and what is said if it may
    // not.
    void setMayBeEmpty(bool mayBeEmpty) { mayBeEmpty_ = mayBeEmpty; }
    // A bare number stays bare instead of taking the unit shown.
    void setKeepsBare(bool keepsBare) { keepsBare_ = keepsBare; }
    // Whether a number here counts things, and so must be whole; it does unless told otherwise.
    void setCounts(bool counts) { counts_ = counts; }
    [[nodiscard]] const std::string& statement() const { return statement_; }

  protected:
    Result<void> commitText(const QString& text, Manner manner) override;
    [[nodiscard]] QString restingText() const override;
    [[nodiscard]] QString editingText() const override;
    [[nodiscard]] Result<QString> stepped(int steps) const override;
    [[nodiscard]] QString preview(const QString& text) const override;
    void burstEnded() override { document_.endBurst(); }

  private:
    [[nodiscard]] bool isLiteral() const;
    [[nodiscard]] std::string withUnit(const std::string& text) const;

    Document& document_;
    Dimension dimension_;
    Commit commit_;
    std::string statement_;
    std::string resting_;
    bool mayBeEmpty_ = false;
    bool keepsBare_ = false;
    bool counts_ = true;
};

}  // namespace shoulderline
