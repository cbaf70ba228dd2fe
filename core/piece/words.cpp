#include "core/piece/words.h"

#include <string>
#include <utility>

#include "core/piece/word_tables.h"

namespace shoulderline {

namespace {

template <class Word>
std::string_view textOf(Word word) {
    for (const auto& entry : Table<Word>::entries) {
        if (entry.word == word) {
            return entry.text;
        }
    }
    return {};
}

template <class Word>
std::optional<Word> wordOf(std::string_view text) {
    for (const auto& entry : Table<Word>::entries) {
        if (entry.text == text) {
            return entry.word;
        }
    }
    return std::nullopt;
}

}  // namespace

std::string_view wordFor(Role word) {
    return textOf(word);
}
std::string_view wordFor(SectionForm word) {
    return textOf(word);
}
std::string_view wordFor(Side word) {
    return textOf(word);
}
std::string_view wordFor(Hand word) {
    return textOf(word);
}
std::string_view wordFor(Cut word) {
    return textOf(word);
}
std::string_view wordFor(JointKind word) {
    return textOf(word);
}
std::string_view wordFor(JointFeature word) {
    return textOf(word);
}
std::string_view wordFor(End word) {
    return textOf(word);
}
std::string_view wordFor(Face word) {
    return textOf(word);
}
std::string_view wordFor(Datum word) {
    return textOf(word);
}
std::string_view wordFor(Run word) {
    return textOf(word);
}
std::string_view wordFor(EasingKind word) {
    return textOf(word);
}
std::string_view wordFor(Arris word) {
    return textOf(word);
}
std::string_view wordFor(CutKind word) {
    return textOf(word);
}
std::string_view wordFor(ScrewHead word) {
    return textOf(word);
}
std::string_view wordFor(SlotWay word) {
    return textOf(word);
}
std::string_view wordFor(BendMethod word) {
    return textOf(word);
}
std::string_view wordFor(BendShoulders word) {
    return textOf(word);
}
std::string_view wordFor(ShoulderFit word) {
    return textOf(word);
}
std::string_view wordFor(SizeName word) {
    return textOf(word);
}
std::string_view wordFor(SizeState word) {
    return textOf(word);
}

template <>
std::optional<Role> fromWord(std::string_view text) {
    return wordOf<Role>(text);
}
template <>
std::optional<SectionForm> fromWord(std::string_view text) {
    return wordOf<SectionForm>(text);
}
template <>
std::optional<Side> fromWord(std::string_view text) {
    return wordOf<Side>(text);
}
template <>
std::optional<Hand> fromWord(std::string_view text) {
    return wordOf<Hand>(text);
}
template <>
std::optional<Cut> fromWord(std::string_view text) {
    return wordOf<Cut>(text);
}
template <>
std::optional<JointKind> fromWord(std::string_view text) {
    return wordOf<JointKind>(text);
}
template <>
std::optional<JointFeature> fromWord(std::string_view text) {
    return wordOf<JointFeature>(text);
}
template <>
std::optional<Face> fromWord(std::string_view text) {
    return wordOf<Face>(text);
}
template <>
std::optional<Datum> fromWord(std::string_view text) {
    return wordOf<Datum>(text);
}
template <>
std::optional<Run> fromWord(std::string_view text) {
    return wordOf<Run>(text);
}
template <>
std::optional<EasingKind> fromWord(std::string_view text) {
    return wordOf<EasingKind>(text);
}
template <>
std::optional<Arris> fromWord(std::string_view text) {
    return wordOf<Arris>(text);
}
template <>
std::optional<CutKind> fromWord(std::string_view text) {
    return wordOf<CutKind>(text);
}
template <>
std::optional<ScrewHead> fromWord(std::string_view text) {
    return wordOf<ScrewHead>(text);
}
template <>
std::optional<SlotWay> fromWord(std::string_view text) {
    return wordOf<SlotWay>(text);
}
template <>
std::optional<BendMethod> fromWord(std::string_view text) {
    return wordOf<BendMethod>(text);
}
template <>
std::optional<BendShoulders> fromWord(std::string_view text) {
    return wordOf<BendShoulders>(text);
}
template <>
std::optional<ShoulderFit> fromWord(std::string_view text) {
    return wordOf<ShoulderFit>(text);
}
template <>
std::optional<SizeName> fromWord(std::string_view text) {
    return wordOf<SizeName>(text);
}
template <>
std::optional<SizeState> fromWord(std::string_view text) {
    return wordOf<SizeState>(text);
}

template <class Word>
std::vector<Word> allWords() {
    std::vector<Word> all;
    for (const auto& entry : Table<Word>::entries) {
        all.push_back(entry.word);
    }
    return all;
}
template std::vector<JointKind> allWords<JointKind>();
template std::vector<JointFeature> allWords<JointFeature>();
template std::vector<SizeName> allWords<SizeName>();
template std::vector<CutKind> allWords<CutKind>();
template std::vector<ScrewHead> allWords<ScrewHead>();
template std::vector<SlotWay> allWords<SlotWay>();
template std::vector<EasingKind> allWords<EasingKind>();
template std::vector<Arris> allWords<Arris>();
template std::vector<SectionForm> allWords<SectionForm>();
template std::vector<Face> allWords<Face>();
template std::vector<Datum> allWords<Datum>();
template std::vector<Run> allWords<Run>();
template std::vector<BendMethod> allWords<BendMethod>();
template std::vector<BendShoulders> allWords<BendShoulders>();
template std::vector<ShoulderFit> allWords<ShoulderFit>();

template <class Word>
std::string listOfWords() {
    std::string list;
    for (const auto& entry : Table<Word>::entries) {
        if (!list.empty()) {
            list += ", ";
        }
        list += entry.text;
    }
    return list;
}
template std::string listOfWords<Role>();
template std::string listOfWords<SectionForm>();
template std::string listOfWords<Side>();
template std::string listOfWords<Cut>();
template std::string listOfWords<JointKind>();
template std::string listOfWords<JointFeature>();
template std::string listOfWords<Face>();
template std::string listOfWords<Datum>();
template std::string listOfWords<Run>();
template std::string listOfWords<BendMethod>();
template std::string listOfWords<BendShoulders>();
template std::string listOfWords<ShoulderFit>();
template std::string listOfWords<CutKind>();
template std::string listOfWords<ScrewHead>();
template std::string listOfWords<SlotWay>();
template std::string listOfWords<EasingKind>();
template std::string listOfWords<Arris>();
template std::string listOfWords<SizeName>();
template std::string listOfWords<SizeState>();

}  // namespace shoulderline
