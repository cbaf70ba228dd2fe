#include "ui/fields/length_field.h"

#include "ui/look/text.h"

namespace shoulderline {

Length stepOf(const LengthStyle& style) {
    switch (style.kind) {
        case LengthStyle::Kind::Fractions:
            return Length::inches(1.0) / style.denominator;
        case LengthStyle::Kind::DecimalInches:
            return Length::inches(0.01);
        case LengthStyle::Kind::Millimetres:
            return Length::mm(1.0);
    }
    return Length::mm(1.0);
}

LengthField::LengthField(QWidget* parent) : MeasureField(parent) {}

void LengthField::setLength(Length length, const LengthStyle& style) {
    length_ = length;
    style_ = style;
    refresh();
}

void LengthField::setLimits(Length least, Length most, const QString& sentence) {
    least_ = least;
    most_ = most;
    limitSentence_ = sentence;
}

Result<void> LengthField::commitText(const QString& text, Manner) {
    const Result<Length> read = readLength(utf8(text), unitOf(style_));
    if (!read) {
        return tl::unexpected(read.error());
    }
    if (*read < least_ || *read > most_) {
        return fail(ErrorCode::OutOfRange, utf8(limitSentence_));
    }
    length_ = *read;
    Q_EMIT lengthChanged();
    return {};
}

QString LengthField::restingText() const {
    return qt(showLength(length_, style_, true));
}

Result<QString> LengthField::stepped(int steps) const {
    const Length step = stepOf(style_);
    return qt(showLength(snapNearest(length_ + step * steps, step), style_, true));
}

}  // namespace shoulderline
