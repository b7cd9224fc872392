#include "ui/dialogs/asks_dialog.h"

#include <QCheckBox>
#include <QDate>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "core/diagnosis/settings.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"
#include "ui/sheet/sheet_print.h"
#include "ui/sheet/walk_sheet.h"

namespace fettle {

namespace {

struct ReadAsks {
    std::vector<Ask> asks;
    SiteSettings site;
};

Result<ReadAsks> readAll(FleetFile& fleet, bool answeredToo) {
    auto asks = asksOf(fleet, "", answeredToo);
    if (!asks) return fail(asks.error());
    auto site = fleet.site();
    if (!site) return fail(site.error());
    return ReadAsks{std::move(*asks), std::move(*site)};
}

}  // namespace

AsksDialog::AsksDialog(FleetWork& work, const Theme& theme, const Units& units, QWidget* parent)
    : QDialog(parent),
      work_(work),
      units_(units),
      word_(new QLabel(this)),
      detail_(new QLabel(this)),
      answeredToo_(new QCheckBox(tr("&Answered and dropped ones too"), this)),
      note_(new QLineEdit(this)),
      table_(new QTableView(this)) {
    setObjectName(QStringLiteral("asksDialog"));
    setWindowTitle(tr("Asked for"));
    setAttribute(Qt::WA_DeleteOnClose);
    asks_.setUnits(units);
    build(theme);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &AsksDialog::showCurrent);
    connect(answeredToo_, &QCheckBox::toggled, this, &AsksDialog::read);
    connect(&work_, &FleetWork::changedFleet, this, &AsksDialog::read);
    read();
}

QPushButton* AsksDialog::button(const QString& text, const char* name, const QString& help) {
    auto* made = new QPushButton(text, this);
    made->setObjectName(QString::fromLatin1(name));
    made->setToolTip(help);
    made->setAutoDefault(false);
    return made;
}

void AsksDialog::build(const Theme& theme) {
    word_->setObjectName(QStringLiteral("asksWord"));
    word_->setWordWrap(true);
    detail_->setObjectName(QStringLiteral("askDetail"));
    detail_->setWordWrap(true);
    detail_->setTextFormat(Qt::PlainText);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    detail_->setMinimumHeight(2 * fontMetrics().lineSpacing());
    answeredToo_->setObjectName(QStringLiteral("answeredToo"));
    answeredToo_->setToolTip(tr("Also what is no longer open, with what became of it"));
    table_->setObjectName(QStringLiteral("asks"));
    table_->setAccessibleName(tr("Recordings asked for"));
    table_->setModel(&asks_);
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->horizontalHeader()->setSectionResizeMode(AskModel::Why, QHeaderView::Stretch);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addWidget(table_, 1);
    all->addWidget(detail_);
    buildFoot();
    resize(wide * 165, fontMetrics().height() * 30);
}

void AsksDialog::buildFoot() {
    note_->setObjectName(QStringLiteral("askNote"));
    note_->setPlaceholderText(tr("what was seen, or why it is dropped"));
    note_->setAccessibleName(tr("Note to the chosen one"));
    answered_ = button(tr("A&nswered"), "askAnswered", tr("The chosen one was answered without a recording"));
    dropped_ = button(tr("&Drop"), "askDropped", tr("The chosen one is no longer wanted"));
    print_ = button(tr("&Print…"), "print", tr("The list as a leaf to walk with"));
    csv_ = button(tr("&CSV…"), "csv", tr("The list for a spreadsheet or an instrument"));
    json_ = button(tr("&JSON…"), "json", tr("The list for other programs"));
    connect(answered_, &QPushButton::clicked, this, [this] { close("answered"); });
    connect(dropped_, &QPushButton::clicked, this, [this] { close("dropped"); });
    connect(print_, &QPushButton::clicked, this, &AsksDialog::print);
    connect(csv_, &QPushButton::clicked, this,
            [this] { askAndSave(tr("CSV (*.csv)"), QStringLiteral("csv"), csvOf(asks_.asks())); });
    connect(json_, &QPushButton::clicked, this,
            [this] { askAndSave(tr("JSON (*.json)"), QStringLiteral("json"), jsonText()); });
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* one = new QHBoxLayout;
    one->addWidget(note_, 1);
    one->addWidget(answered_);
    one->addWidget(dropped_);
    auto* foot = new QHBoxLayout;
    foot->addWidget(answeredToo_);
    foot->addStretch(1);
    for (QWidget* part : {static_cast<QWidget*>(print_), static_cast<QWidget*>(csv_),
                          static_cast<QWidget*>(json_), static_cast<QWidget*>(buttons)})
        foot->addWidget(part);
    auto* all = static_cast<QVBoxLayout*>(layout());
    all->addLayout(one);
    all->addLayout(foot);
}

void AsksDialog::read() {
    work_.ask<ReadAsks>(
        this, QStringLiteral("all asks"),
        [all = answeredToo_->isChecked()](FleetFile& fleet, const CancelToken&) {
            return readAll(fleet, all);
        },
        [this](Result<ReadAsks> answer) {
            if (!answer) return word_->setText(sentence(answer.error()));
            site_ = answer->site.site;
            word_->setText(
                answer->asks.empty()
                    ? tr("Nothing is asked for. A machine's evidence panel suggests what would settle "
                         "its findings; Ask puts it here.")
                    : tr("%1 in the order of the walk. A recording that comes in and brings what it "
                         "says answers it by itself.")
                          .arg(answer->asks.size()));
            asks_.set(std::move(answer->asks), siteZone(answer->site.timeZone));
            fitColumns();
            if (asks_.rowCount() > 0) table_->setCurrentIndex(asks_.index(0, 0));
            showCurrent();
        });
}

// Heads and cells whole, "why" takes what is left.
void AsksDialog::fitColumns() {
    const int margin = 4 * fontMetrics().averageCharWidth();
    for (int column = 0; column < AskModel::Columns; ++column) {
        if (column == AskModel::Why) continue;
        const QString head = asks_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        table_->resizeColumnToContents(column);
        const int wide = fontMetrics().horizontalAdvance(head) + margin;
        table_->setColumnWidth(column, std::max(table_->columnWidth(column), wide));
    }
}

void AsksDialog::showCurrent() {
    const Ask* ask = asks_.at(table_->currentIndex().row());
    const bool open = ask && ask->state() == "open" && work_.writable();
    for (QWidget* part : std::initializer_list<QWidget*>{answered_, dropped_, note_})
        part->setEnabled(open);
    detail_->setText(ask ? tr("%1, %2: %3; %4. Asked by %5.")
                               .arg(shown(ask->request.machine), askedWhere(ask->request),
                                    askedWhat(ask->spec, units_), shown(ask->request.why),
                                    shown(ask->request.askedBy))
                         : QString());
}

void AsksDialog::close(const std::string& outcome) {
    const Ask* ask = asks_.at(table_->currentIndex().row());
    if (!ask) return;
    work_.write<void>(
        this,
        [id = ask->request.id, outcome, note = kept(note_->text())](FleetFile& fleet) {
            return closeAsk(fleet, id, outcome, note);
        },
        [this](Status status) {
            if (!status) return word_->setText(sentence(status.error()));
            note_->clear();
        });
}

void AsksDialog::save(const QString& path, std::string bytes) {
    saveFile(work_, this, path, std::move(bytes), [this, path](const QString& trouble) {
        if (!trouble.isEmpty()) return word_->setText(trouble);
        word_->setText(tr("Saved as %1.").arg(path));
        emit saved(path);
    });
}

void AsksDialog::askAndSave(const QString& filter, const QString& suffix, std::string bytes) {
    askWhereToSave(this, {tr("Save what is asked for"), filter, suffix, "asked-for"},
                   [this, bytes = std::move(bytes)](const QString& path) { save(path, bytes); });
}

std::string AsksDialog::jsonText() const {
    Json all = Json::object();
    all["schema"] = 1;
    all["engine"] = WeighingSettings().engine();
    all["asks"] = toJson(asks_.asks());
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

void AsksDialog::print() {
    const WalkSheet walk{site_, kept(QDate::currentDate().toString(Qt::ISODate)), asks_.asks()};
    const auto pages = [walk, units = units_](PaperSize size) {
        return std::make_unique<PrintedPages>(layOutWalk(walk, size, units), size);
    };
    askAndPrint(this, titleOf(walk).title, pages, units_.inches ? PaperSize::Letter : PaperSize::A4,
                [this](Status printed) {
                    if (!printed) word_->setText(sentence(printed.error()));
                });
}

}  // namespace fettle
