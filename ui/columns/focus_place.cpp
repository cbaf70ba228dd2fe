#include "ui/columns/focus_place.h"

#include <QApplication>
#include <algorithm>
#include <vector>

namespace shoulderline {

namespace {

// What takes the focus by Tab, in the order in which it was made; what is about to go is hidden,
// and lists that drop down are windows of their own.
std::vector<QWidget*> stopsIn(const QWidget& form) {
    std::vector<QWidget*> stops;
    for (QWidget* one : form.findChildren<QWidget*>()) {
        if (!one->isHidden() && one->window() == form.window() &&
            (one->focusPolicy() & Qt::TabFocus) != 0) {
            stops.push_back(one);
        }
    }
    return stops;
}

}  // namespace

std::optional<FocusPlace> focusPlaceIn(const QWidget& form) {
    const QWidget* focus = QApplication::focusWidget();
    const std::vector<QWidget*> stops = stopsIn(form);
    const auto at = std::find(stops.begin(), stops.end(), focus);
    if (at == stops.end()) {
        return std::nullopt;
    }
    const QString name = focus->accessibleName();
    const auto which = std::count_if(
        stops.begin(), at, [&](const QWidget* one) { return one->accessibleName() == name; });
    return FocusPlace{
        name, static_cast<int>(which), static_cast<std::size_t>(std::distance(stops.begin(), at))};
}

void chainFocus(QWidget& form) {
    QWidget* before = &form;
    for (QWidget* one : stopsIn(form)) {
        QWidget::setTabOrder(before, one);
        before = one;
    }
}

void giveFocus(QWidget& form, const std::optional<FocusPlace>& place) {
    const std::vector<QWidget*> stops = stopsIn(form);
    if (!place || stops.empty()) {
        return;
    }
    int which = place->which;
    const auto same = std::find_if(stops.begin(), stops.end(), [&](const QWidget* one) {
        return one->accessibleName() == place->name && which-- == 0;
    });
    QWidget* wanted = same != stops.end() ? *same : stops[std::min(place->index, stops.size() - 1)];
    wanted->setFocus(Qt::OtherFocusReason);
}

}  // namespace shoulderline
