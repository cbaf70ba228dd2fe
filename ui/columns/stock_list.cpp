#include "ui/columns/stock_list.h"

#include <QGridLayout>
#include <QMenu>
#include <algorithm>

#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kStockFieldWidth = 88;

QString woodOf(const Stock& stock) {
    const QString wood = qt(stock.species).toLower() + u", "_s + qt(wordFor(stock.cut));
    return stock.isHeatTreated ? StockList::tr("%1, heat-treated").arg(wood) : wood;
}

}  // namespace

StockList::StockList(Document& document, Prompts& prompts, QWidget* parent)
    : QWidget(parent), document_(document), prompts_(prompts) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    auto* heading = new SectionHeading(tr("Stock"), this);
    connect(heading->addCommand(tr("add"), tr("add a stock")),
            &TextButton::clicked,
            this,
            &StockList::add);
    layout->addWidget(heading);
    rows_ = new QVBoxLayout;
    rows_->setSpacing(8);
    layout->addLayout(rows_);
    connect(&document_, &Document::changed, this, &StockList::refresh);
    refresh();
}

const Stock* StockList::find(const std::string& name) const {
    const std::vector<Stock>& stocks = document_.piece().stocks;
    const auto it = std::find_if(
        stocks.begin(), stocks.end(), [&](const Stock& stock) { return stock.name == name; });
    return it == stocks.end() ? nullptr : &*it;
}

void StockList::refresh() {
    const std::vector<Stock>& stocks = document_.piece().stocks;
    if (!std::equal(all_.begin(),
                    all_.end(),
                    stocks.begin(),
                    stocks.end(),
                    [](const Row& row, const Stock& stock) { return row.name == stock.name; })) {
        rebuild();
    }
    for (std::size_t i = 0; i < stocks.size(); ++i) {
        all_[i].thickness->setStatement(stocks[i].thickness);
        const Result<std::string> value =
            document_.shownValue(stocks[i].thickness, Dimension::Length);
        const bool isOver = !stocks[i].measuredThickness.empty();
        all_[i].thickness->setStateWord(isOver ? tr("planned") : QString());
        all_[i].measured->setStatement(stocks[i].measuredThickness);
        all_[i].measured->setStateWord(isOver ? tr("as found") : QString());
        all_[i].wood->setText(woodOf(stocks[i]));
        all_[i].wood->setAccessibleName(tr("%1: %2").arg(qt(stocks[i].name), woodOf(stocks[i])));
    }
}

void StockList::rebuild() {
    clearLayout(*rows_);
    all_.clear();
    for (const Stock& stock : document_.piece().stocks) {
        auto* holder = new QWidget(this);
        rows_->addWidget(holder);
        all_.push_back(makeRow(stock, *holder));
        holder->show();
    }
}

StockList::Row StockList::makeRow(const Stock& stock, QWidget& holder) {
    auto* grid = new QGridLayout(&holder);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(3);
    grid->setColumnStretch(0, 1);
    Row row;
    row.name = stock.name;
    const auto setter = [this, name = stock.name](Statement Stock::*which) {
        return
            [this, name, which](const std::string& statement, Document::Kind kind) -> Result<void> {
                const Stock* now = find(name);
                if (now == nullptr) {
                    return fail(ErrorCode::UnknownName, utf8(tr("That stock is gone.")));
                }
                Stock next = *now;
                next.*which = statement;
                return document_.apply(SetStock{next}, kind);
            };
    };
    row.thickness =
        new StatementField(document_, Dimension::Length, setter(&Stock::thickness), &holder);
    row.thickness->setFixedWidth(kStockFieldWidth);
    row.thickness->setAccessibleName(tr("%1, thickness").arg(qt(stock.name)));
    auto* label = new Label(qt(stock.name), &holder);
    label->setBuddy(row.thickness);
    label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row.wood = new TextButton({}, TextButton::Kind::Quiet, &holder);
    row.wood->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    QFont small = row.wood->font();
    small.setPointSizeF(small.pointSizeF() * 0.92);
    row.wood->setFont(small);
    connect(row.wood, &TextButton::clicked, this, [this, name = stock.name, wood = row.wood] {
        openWoodMenu(name, *wood);
    });
    row.measured = new StatementField(
        document_, Dimension::Length, setter(&Stock::measuredThickness), &holder);
    row.measured->setFixedWidth(kStockFieldWidth);
    row.measured->setMayBeEmpty(true);
    row.measured->setPlaceholderText(tr("measured"));
    row.measured->setAccessibleName(tr("%1, thickness as measured").arg(qt(stock.name)));
    grid->addWidget(label, 0, 0);
    grid->addWidget(row.thickness, 0, 1);
    grid->addWidget(row.wood, 1, 0);
    grid->addWidget(row.measured, 1, 1);
    return row;
}

void StockList::openWoodMenu(const std::string& name, QWidget& under) {
    const Stock* stock = find(name);
    if (stock == nullptr) {
        return;
    }
    const Stock now = *stock;
    QMenu menu(this);
    const auto setTo = [this, now](const auto& change) {
        Stock next = now;
        change(next);
        if (const Result<void> done = document_.apply(SetStock{next}); !done) {
            prompts_.tell(this, qt(done.error().message));
        }
    };
    for (const Cut cut : {Cut::Flat, Cut::Quarter, Cut::Rift}) {
        QAction* action = menu.addAction(
            qt(wordFor(cut)), this, [setTo, cut] { setTo([cut](Stock& s) { s.cut = cut; }); });
        action->setCheckable(true);
        action->setChecked(cut == now.cut);
    }
    menu.addSeparator();
    QAction* heated = menu.addAction(tr("heat-treated"), this, [setTo] {
        setTo([](Stock& s) { s.isHeatTreated = !s.isHeatTreated; });
    });
    heated->setCheckable(true);
    heated->setChecked(now.isHeatTreated);
    menu.addSeparator();
    for (const Species& species : document_.resources().species.all()) {
        QAction* action =
            menu.addAction(qt(species.name).toLower(), this, [setTo, kind = species.name] {
                setTo([kind](Stock& s) { s.species = kind; });
            });
        action->setCheckable(true);
        action->setChecked(species.name == now.species);
    }
    menu.addSeparator();
    menu.addAction(tr("Remove %1").arg(qt(name)), this, [this, name] {
        static_cast<void>(document_.apply(RemoveStock{name}));
    });
    menu.exec(under.mapToGlobal(QPoint(0, under.height())));
}

void StockList::add() {
    const std::optional<QString> name = prompts_.askText(this, tr("Add stock"), tr("Name"), {});
    if (!name) {
        return;
    }
    if (find(utf8(name->trimmed())) != nullptr) {
        prompts_.tell(this, tr("There is a stock '%1' already.").arg(name->trimmed()));
        return;
    }
    Stock stock;
    stock.name = utf8(name->trimmed());
    const std::vector<Stock>& stocks = document_.piece().stocks;
    const std::vector<Species>& species = document_.resources().species.all();
    stock.species = !stocks.empty()    ? stocks.back().species
                    : !species.empty() ? species.front().name
                                       : std::string();
    stock.thickness = document_.piece().unit == Unit::Inch ? "7/8 in" : "22 mm";
    if (const Result<void> done = document_.apply(SetStock{stock}); !done) {
        prompts_.tell(this, qt(done.error().message));
    }
}

}  // namespace shoulderline
