#include "ui/pages/register_table.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

constexpr int kMostLines = 12;

// Cells with trouble in the trouble ink and underlined; choices by a list.
class CellDelegate : public RuledDelegate {
  public:
    CellDelegate(const JsonTableModel& model, const Theme& theme, QObject* parent)
        : RuledDelegate(theme, parent), model_(model) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        QStyleOptionViewItem cell = option;
        const bool trouble = !model_.troubleOf(index.row(), index.column()).isEmpty();
        for (const auto role : {QPalette::Text, QPalette::HighlightedText})
            if (trouble) cell.palette.setColor(role, theme_.colour(Role::Trouble));
        RuledDelegate::paint(painter, cell, index);
        painter->save();
        painter->setPen(QPen(theme_.colour(trouble ? Role::Trouble : Role::Accent), 1));
        if (trouble) painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
        if (option.state & QStyle::State_HasFocus) painter->drawRect(option.rect.adjusted(0, 0, -1, -1));
        painter->restore();
    }

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override {
        const FieldSpec& spec = model_.columns()[std::size_t(index.column())];
        const QStringList choices = model_.choices(index.column());
        if (choices.isEmpty()) return QStyledItemDelegate::createEditor(parent, option, index);
        auto* box = new QComboBox(parent);
        box->setEditable(spec.kind == FieldKind::Text || spec.pointer == "@position");
        if (spec.pointer.front() != '@') box->addItem(QString());
        box->addItems(choices);
        return box;
    }

    void setEditorData(QWidget* editor, const QModelIndex& index) const override {
        auto* box = qobject_cast<QComboBox*>(editor);
        if (!box) return QStyledItemDelegate::setEditorData(editor, index);
        const QString text = index.data(Qt::EditRole).toString();
        if (box->isEditable()) return box->setEditText(text);
        if (box->findText(text) < 0) box->addItem(text);
        box->setCurrentIndex(box->findText(text));
    }

    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override {
        if (auto* box = qobject_cast<QComboBox*>(editor))
            model->setData(index, box->currentText(), Qt::EditRole);
        else
            QStyledItemDelegate::setModelData(editor, model, index);
    }

  private:
    const JsonTableModel& model_;
};

}  // namespace

RegisterTable::RegisterTable(MachineDocument& document, std::unique_ptr<TableRows> rows,
                             std::vector<FieldSpec> columns, const QString& title, const char* name,
                             const Theme& theme, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      model_(document, std::move(rows), std::move(columns)),
      view_(new QTableView(this)),
      head_(new QLabel(title, this)),
      troubles_(new QLabel(this)),
      add_(new QPushButton(tr("Add"), this)),
      remove_(new QPushButton(tr("Remove"), this)) {
    const QString base = QString::fromLatin1(name);
    setObjectName(base);
    view_->setObjectName(base + QStringLiteral(".table"));
    add_->setObjectName(base + QStringLiteral(".add"));
    remove_->setObjectName(base + QStringLiteral(".remove"));
    troubles_->setObjectName(base + QStringLiteral(".troubles"));
    view_->setAccessibleName(title);
    add_->setAccessibleName(tr("Add to %1").arg(title));
    remove_->setAccessibleName(tr("Remove from %1").arg(title));
    view_->setModel(&model_);
    setRuled(*view_, theme);
    view_->setSelectionBehavior(QAbstractItemView::SelectItems);
    view_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                           QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    view_->setItemDelegate(new CellDelegate(model_, theme, view_));
    troubles_->setWordWrap(true);
    auto* first = new QHBoxLayout;
    first->addWidget(head_);
    first->addStretch(1);
    first->addWidget(add_);
    first->addWidget(remove_);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 8);
    all->setSpacing(4);
    all->addLayout(first);
    all->addWidget(view_);
    all->addWidget(troubles_);
    connect(add_, &QPushButton::clicked, this, [this] {
        const int row = model_.add(view_->currentIndex().row());
        if (row < 0) return;
        view_->setCurrentIndex(model_.index(row, 0));
        view_->setFocus();
    });
    connect(remove_, &QPushButton::clicked, this, [this] { model_.remove(view_->currentIndex().row()); });
    connect(&document, &MachineDocument::edited, this, &RegisterTable::refresh);
    connect(&theme, &Theme::changed, this, &RegisterTable::dress);
    refresh();
    dress();
}

int RegisterTable::currentRow() const {
    return view_->currentIndex().row();
}

void RegisterTable::chooseRow(int row) {
    view_->setCurrentIndex(model_.index(row, 0));
    view_->setFocus();
}

void RegisterTable::refresh() {
    const QStringList troubles = model_.troubles();
    troubles_->setText(troubles.join(u'\n'));
    troubles_->setVisible(!troubles.isEmpty());
    remove_->setEnabled(add_->isEnabled() && model_.rowCount() > 0);
    fitHeight();
}

void RegisterTable::fitHeight() {
    const int lines = std::clamp(model_.rowCount(), 1, kMostLines);
    const int line = view_->verticalHeader()->defaultSectionSize();
    const int bar = view_->style()->pixelMetric(QStyle::PM_ScrollBarExtent);
    view_->setFixedHeight(view_->horizontalHeader()->sizeHint().height() + lines * line + bar + 2);
}

void RegisterTable::setReadOnly(bool readOnly) {
    model_.setReadOnly(readOnly);
    add_->setEnabled(!readOnly);
    remove_->setEnabled(!readOnly && model_.rowCount() > 0);
}

int RegisterTable::headWidth(int column) const {
    return fontMetrics().horizontalAdvance(
        model_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
}

void RegisterTable::dress() {
    QFont bold = font();
    bold.setWeight(QFont::DemiBold);
    head_->setFont(bold);
    setInk(*troubles_, theme_, Role::Trouble);
    const int wide = fontMetrics().averageCharWidth();
    const auto& columns = model_.columns();
    for (int i = 0; i < int(columns.size()); ++i)
        view_->setColumnWidth(i, std::max(columns[std::size_t(i)].width * wide, headWidth(i)) + 20);
    view_->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 10);
    fitHeight();
}

}  // namespace fettle
