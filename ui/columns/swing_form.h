#pragma once

#include <string>

#include "ui/columns/form_rows.h"

namespace shoulderline {

// What the maker states of how an assembly swings: what leans on which bar, the stations that the
// bar stands at, pins, spacers and pegs.
class SwingForm final : public FormRows<Assembly> {
    Q_OBJECT
  public:
    SwingForm(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    // Shows the assembly of that name; nothing for one that is not there.
    void show(const std::string& assembly);

  private:
    void addRows(const Assembly& assembly);
    void addCommands(const Assembly& assembly);
    void addStation(std::size_t index);
    void addPins(const Swing& swing);
    void addSize(const QString& label, Statement Swing::*member, const QString& whenEmpty);
    Result<void> change(const Change& change, Document::Kind kind = Document::Kind::Whole) override;
    [[nodiscard]] const Assembly* thing() const override;

    std::string name_;
    std::string rows_;  // which the form has: rebuilt when others are wanted
};

}  // namespace shoulderline
