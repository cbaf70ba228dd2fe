#pragma once

#include <QString>
#include <QWidget>
#include <optional>

namespace shoulderline {

// Where the focus is in a form whose widgets are about to be made anew.
struct FocusPlace {
    QString name;           // accessible, of the widget that has it
    int which = 0;          // among those of one name
    std::size_t index = 0;  // among all that take the focus
};

// Nothing where the focus is elsewhere.
[[nodiscard]] std::optional<FocusPlace> focusPlaceIn(const QWidget& form);
// Tab goes through the form's widgets as they stand in it, after what comes before the form.
void chainFocus(QWidget& form);
// Gives the focus to the widget of that name, or to the one that stands there now.
void giveFocus(QWidget& form, const std::optional<FocusPlace>& place);

}  // namespace shoulderline
