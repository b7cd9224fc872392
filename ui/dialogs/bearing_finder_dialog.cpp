#include "ui/dialogs/bearing_finder_dialog.h"

#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr std::size_t kMostRows = 400;
constexpr double kUsualTolerance = 2;  // per cent: real bearings slip 1 to 2

std::optional<double> wished(const QDoubleSpinBox* box) {
    return box->value() > 0 ? std::optional<double>(box->value()) : std::nullopt;
}

QString lineText(BearingLine line, int multiple) {
    QString name;
    switch (line) {
        case BearingLine::OuterRace:
            name = BearingFinderDialog::tr("outer race");
            break;
        case BearingLine::InnerRace:
            name = BearingFinderDialog::tr("inner race");
            break;
        case BearingLine::RollingElement:
            name = BearingFinderDialog::tr("rolling element, twice its spin");
            break;
        case BearingLine::Cage:
            name = BearingFinderDialog::tr("cage");
            break;
    }
    return multiple == 1 ? name : BearingFinderDialog::tr("%1 x %2").arg(multiple).arg(name);
}

QString buildText(const KnownBearing& bearing) {
    if (!bearing.build) return BearingFinderDialog::tr("not in the table");
    return BearingFinderDialog::tr("%1 x %2 mm on %3 mm")
        .arg(bearing.build->rollingElements)
        .arg(bearing.build->elementMm)
        .arg(bearing.build->pitchMm);
}

QString sizeText(const KnownBearing& bearing) {
    if (!bearing.size) return {};
    const BearingSize& size = *bearing.size;
    if (size.widthMm <= 0) return QStringLiteral("%1 \u00d7 %2").arg(size.boreMm).arg(size.outerMm);
    return QStringLiteral("%1 \u00d7 %2 \u00d7 %3").arg(size.boreMm).arg(size.outerMm).arg(size.widthMm);
}

}  // namespace

BearingFinderDialog::BearingFinderDialog(const Theme& theme, const Units& units, double rpm, QWidget* parent)
    : QDialog(parent),
      hz_(shownUnit(QStringLiteral("Hz"), units)),
      word_(new QLabel(this)),
      part_(new QLineEdit(this)),
      model_(new QStandardItemModel(0, 6, this)),
      table_(nullptr),
      put_(new QPushButton(tr("&Put into the form"), this)),
      putName_(new QPushButton(tr("Put &designation alone"), this)) {
    setObjectName(QStringLiteral("bearingFinder"));
    setWindowTitle(tr("Find a bearing"));
    setAttribute(Qt::WA_DeleteOnClose);
    if (auto known = knownBearings(); known)
        all_ = std::move(*known);
    else
        word_->setText(sentence(known.error()));
    word_->setObjectName(QStringLiteral("finderWord"));
    word_->setWordWrap(true);
    put_->setObjectName(QStringLiteral("finderPut"));
    putName_->setObjectName(QStringLiteral("finderPutName"));
    auto* all = new QVBoxLayout(this);
    all->addWidget(wishes());
    rpm_->setValue(rpm);
    table_ = results(theme);
    all->addWidget(word_);
    all->addWidget(table_, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(put_, QDialogButtonBox::ActionRole);
    buttons->addButton(putName_, QDialogButtonBox::ActionRole);
    all->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(put_, &QPushButton::clicked, this, [this] { give(true); });
    connect(putName_, &QPushButton::clicked, this, [this] { give(false); });
    connect(part_, &QLineEdit::textChanged, this, &BearingFinderDialog::find);
    for (QDoubleSpinBox* box : {bore_, outer_, width_, order_, tolerance_})
        connect(box, &QDoubleSpinBox::valueChanged, this, &BearingFinderDialog::find);
    for (QDoubleSpinBox* box : {line_, rpm_})
        connect(box, &QDoubleSpinBox::valueChanged, this, &BearingFinderDialog::orderOfLine);
    const int room = parent ? parent->width() : 10000;
    resize(std::min(fontMetrics().averageCharWidth() * 178, room), fontMetrics().height() * 30);
    find();
}

QDoubleSpinBox* BearingFinderDialog::number(const char* name, const QString& says, const QString& unit,
                                            double most, int decimals) {
    auto* box = new QDoubleSpinBox(this);
    box->setObjectName(QString::fromLatin1(name));
    box->setAccessibleName(says);
    box->setToolTip(says);
    box->setRange(0, most);
    box->setDecimals(decimals);
    box->setSpecialValueText(tr("any"));
    box->setSuffix(unit.isEmpty() ? QString() : QStringLiteral(" ") + unit);
    return box;
}

QWidget* BearingFinderDialog::wishes() {
    auto* wishes = new QWidget(this);
    auto* grid = new QGridLayout(wishes);
    grid->setContentsMargins(0, 0, 0, 0);
    part_->setObjectName(QStringLiteral("finderPart"));
    part_->setAccessibleName(tr("Part of the designation"));
    part_->setPlaceholderText(tr("6316, NU 3 …"));
    part_->setClearButtonEnabled(true);
    bore_ = number("finderBore", tr("Bore in mm"), tr("mm"), 2000, 1);
    outer_ = number("finderOuter", tr("Outside diameter in mm"), tr("mm"), 3000, 1);
    width_ = number("finderWidth", tr("Width in mm"), tr("mm"), 1000, 1);
    order_ = number("finderOrder", tr("Order of the bearing's shaft"), {}, 300, 4);
    line_ = number("finderLine", tr("Line found in a spectrum, in %1").arg(hz_.unit), hz_.unit,
                   hz_.shown(100000), 3);
    rpm_ = number("finderSpeed", tr("Speed of the bearing's shaft in r/min"), tr("r/min"), 200000, 2);
    tolerance_ = number("finderTolerance", tr("How far the line may be off, in per cent"), tr("%"), 20, 1);
    tolerance_->setSpecialValueText({});
    tolerance_->setValue(kUsualTolerance);
    const std::pair<QString, QWidget*> fields[] = {{tr("D&esignation"), part_}, {tr("&Bore"), bore_},
                                                   {tr("&Outside"), outer_},    {tr("W&idth"), width_},
                                                   {tr("O&rder"), order_},      {tr("or &line"), line_},
                                                   {tr("at &speed"), rpm_},     {tr("wi&thin"), tolerance_}};
    int place = 0;
    for (const auto& [text, field] : fields) {
        auto* label = new QLabel(text, wishes);
        label->setBuddy(field);
        grid->addWidget(label, place / 4, 2 * (place % 4));
        grid->addWidget(field, place / 4, 2 * (place % 4) + 1);
        grid->setColumnStretch(2 * (place % 4) + 1, 1);
        ++place;
    }
    return wishes;
}

QTableView* BearingFinderDialog::results(const Theme& theme) {
    auto* table = new QTableView(this);
    table->setObjectName(QStringLiteral("finderResults"));
    table->setAccessibleName(tr("Bearings that fit"));
    model_->setHorizontalHeaderLabels({tr("Designation"), tr("Type"), tr("Bore × outside × width, mm"),
                                       tr("Elements inside"), tr("Line that fits"), tr("Slip")});
    table->setModel(model_);
    setRuled(*table, theme);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    const int wide = fontMetrics().averageCharWidth();
    const int widths[] = {18, 24, 36, 32, 44};
    for (int column = 0; column < 5; ++column)
        table->setColumnWidth(column, widths[column] * wide);
    keepHeadsWhole(*table);
    table->horizontalHeader()->setStretchLastSection(true);
    connect(table, &QTableView::activated, this, [this] { give(true); });
    return table;
}

void BearingFinderDialog::orderOfLine() {
    if (line_->value() <= 0 || rpm_->value() <= 0) return;
    order_->setValue(hz_.stored(line_->value()) * 60 / rpm_->value());
}

void BearingFinderDialog::find() {
    found_ = findBearings(all_, {kept(part_->text()), wished(bore_), wished(outer_), wished(width_)});
    rows_.clear();
    model_->removeRows(0, model_->rowCount());
    std::size_t fitting = found_.size();
    if (const auto order = wished(order_)) {
        const auto fits = fitOrder(found_, *order, tolerance_->value() / 100);
        fitting = fits.size();
        for (std::size_t i = 0; i < std::min(fits.size(), kMostRows); ++i) {
            rows_.push_back(fits[i].bearing);
            add(found_[fits[i].bearing], &fits[i]);
        }
        word_->setText(
            tr("%1 lines of known builds lie within %2 % of order %3. Builds differ by maker: confirm on "
               "the plate or by the maker's data.")
                .arg(fitting)
                .arg(significant(tolerance_->value()), significant(*order, 5)));
    } else {
        for (std::size_t i = 0; i < std::min(found_.size(), kMostRows); ++i) {
            rows_.push_back(i);
            add(found_[i], nullptr);
        }
        word_->setText(
            tr("%1 fit. Sizes by ISO 15; what is inside is typical and differs by maker: confirm it.")
                .arg(fitting));
    }
    if (!rows_.empty()) table_->setCurrentIndex(model_->index(0, 0));
    for (QPushButton* button : {put_, putName_})
        button->setEnabled(!rows_.empty() && whyNot_.isEmpty());
    if (!whyNot_.isEmpty()) word_->setText(word_->text() + QChar('\n') + whyNot_);
}

void BearingFinderDialog::refusePut(const QString& why) {
    whyNot_ = why;
    for (QPushButton* button : {put_, putName_})
        button->setToolTip(why);
    find();
}

void BearingFinderDialog::add(const KnownBearing& bearing, const OrderFit* fit) {
    const QString slip = fit ? tr("%1 %").arg(fixedText(100 * fit->slip, 2)) : QString();
    const QString line =
        fit ? tr("%1, order %2").arg(lineText(fit->line, fit->multiple), fixedText(fit->expectedOrder, 4))
            : QString();
    QList<QStandardItem*> row;
    for (const QString& text : {shown(bearing.designation), shown(bearing.type).replace(u'_', u' '),
                                sizeText(bearing), buildText(bearing), line, slip}) {
        row << new QStandardItem(text);
        row.back()->setEditable(false);
        row.back()->setToolTip(bearing.source.empty() ? text : shown(bearing.source));
    }
    model_->appendRow(row);
}

void BearingFinderDialog::give(bool withBuild) {
    const int row = table_->currentIndex().row();
    if (row < 0 || row >= int(rows_.size()) || !whyNot_.isEmpty()) return;
    emit bearingWanted(found_[rows_[std::size_t(row)]], withBuild);
    accept();
}

}  // namespace fettle
