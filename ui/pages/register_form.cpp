#include "ui/pages/register_form.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

constexpr int kFormColumns = 3;  // label, editor, unit

QString objectNameOf(const std::string& pointer) {
    return QStringLiteral("field") + shown(pointer);
}

void setEditable(QWidget* editor, bool editable) {
    if (auto* line = qobject_cast<QLineEdit*>(editor))
        line->setReadOnly(!editable);
    else
        editor->setEnabled(editable);
}

bool isWanted(const FieldSpec& spec, const MachineDocument& document) {
    const auto equals = spec.onlyWhen.find('=');
    return equals == std::string::npos ||
           kept(document.text(spec.onlyWhen.substr(0, equals))) == spec.onlyWhen.substr(equals + 1);
}

QString textIn(const QWidget* editor) {
    if (const auto* line = qobject_cast<const QLineEdit*>(editor)) return line->text();
    return qobject_cast<const QComboBox*>(editor)->currentText();
}

void setTextIn(QWidget* editor, const QString& text) {
    if (auto* line = qobject_cast<QLineEdit*>(editor)) {
        line->setText(text);
        return line->setCursorPosition(0);
    }
    auto* box = qobject_cast<QComboBox*>(editor);
    if (box->isEditable()) return box->setEditText(text);
    if (box->findText(text) < 0) box->addItem(text);  // a word of a newer description
    box->setCurrentIndex(box->findText(text));
}

}  // namespace

RegisterForm::RegisterForm(MachineDocument& document, const Theme& theme,
                           const std::vector<FieldGroup>& groups, QWidget* parent)
    : QWidget(parent), document_(document), theme_(theme), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(8);
    grid_->setVerticalSpacing(4);
    int row = 0;
    for (const FieldGroup& group : groups)
        addGroup(group, row);
    grid_->setRowStretch(row, 1);
    grid_->setColumnStretch(1, 1);
    connect(&document, &MachineDocument::edited, this, [this] { refresh(false); });
    connect(&document, &MachineDocument::loaded, this, [this] { refresh(true); });
    connect(&document, &MachineDocument::stepped, this, [this] { refresh(true); });
    connect(&theme, &Theme::changed, this, &RegisterForm::dress);
    refresh(true);
    dress();
}

void RegisterForm::addGroup(const FieldGroup& group, int& row) {
    auto* head = new QLabel(group.title, this);
    heads_.push_back(head);
    if (row > 0) grid_->setRowMinimumHeight(row++, 10);
    grid_->addWidget(head, row++, 0, 1, kFormColumns);
    grid_->addWidget(new ThinRule(theme_, this), row++, 0, 1, kFormColumns);
    for (const FieldSpec& spec : group.fields) {
        QWidget* editor = editorOf(spec);
        auto* label = new QLabel(spec.label, this);
        label->setBuddy(editor);
        label->setToolTip(spec.hint);
        auto* trouble = new QLabel(this);
        trouble->setObjectName(QStringLiteral("trouble") + shown(spec.pointer));
        trouble->setWordWrap(true);
        trouble->hide();
        grid_->addWidget(label, row, 0);
        grid_->addWidget(editor, row, 1);
        auto* unit = new QLabel(spec.unit, this);
        grid_->addWidget(unit, row++, 2);
        grid_->addWidget(trouble, row++, 1, 1, kFormColumns - 1);
        fields_.push_back({spec, editor, label, unit, trouble});
    }
}

QWidget* RegisterForm::editorOf(const FieldSpec& spec) {
    QWidget* editor = nullptr;
    const auto edit = [this, pointer = spec.pointer, kind = spec.kind](const QString& text) {
        document_.setText(pointer, text, kind);
    };
    const auto left = [this] { document_.endTyping(); };
    if (spec.kind == FieldKind::Choice || spec.kind == FieldKind::Yes || !spec.words.isEmpty()) {
        auto* box = new QComboBox(this);
        box->addItem(QString());
        box->addItems(spec.words);
        box->setEditable(spec.kind == FieldKind::Text);
        if (box->isEditable())
            connect(box, &QComboBox::editTextChanged, this, edit);
        else
            connect(box, &QComboBox::textActivated, this, edit);
        connect(box, &QComboBox::textActivated, this, left);
        if (box->lineEdit()) box->lineEdit()->installEventFilter(this);
        editor = box;
    } else {
        auto* line = new QLineEdit(this);
        connect(line, &QLineEdit::textEdited, this, edit);
        connect(line, &QLineEdit::editingFinished, this, left);
        line->installEventFilter(this);
        editor = line;
    }
    editor->setObjectName(objectNameOf(spec.pointer));
    editor->setAccessibleName(spec.unit.isEmpty() ? spec.label
                                                  : QStringLiteral("%1, %2").arg(spec.label, spec.unit));
    editor->setToolTip(spec.hint);
    editor->setMinimumWidth(fontMetrics().averageCharWidth() * 14);
    return editor;
}

// A field's own undo would know nothing of the others': the keys are left to the page.
bool RegisterForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride) return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool redo = key->key() == Qt::Key_Y && key->modifiers() == Qt::ControlModifier;
    if (!key->matches(QKeySequence::Undo) && !key->matches(QKeySequence::Redo) && !redo)
        return QWidget::eventFilter(watched, event);
    event->ignore();
    return true;
}

// The field that is typed in keeps what was typed.
void RegisterForm::refresh(bool whole) {
    for (Field& field : fields_) {
        const QString text = document_.text(field.spec.pointer);
        const bool typing = !whole && field.editor->hasFocus();
        if (!typing && textIn(field.editor) != text) setTextIn(field.editor, text);
        const QString trouble = document_.troubleAt(field.spec.pointer);
        field.trouble->setText(trouble);
        field.trouble->setVisible(!trouble.isEmpty());
        const bool wanted = isWanted(field.spec, document_) || !text.isEmpty();
        for (QWidget* part :
             {field.editor, static_cast<QWidget*>(field.label), static_cast<QWidget*>(field.unit)})
            part->setVisible(wanted);
    }
}

void RegisterForm::setReadOnly(bool readOnly) {
    readOnly_ = readOnly;
    for (const Field& field : fields_)
        setEditable(field.editor, !readOnly_ && !field.fixed);
}

void RegisterForm::setFixed(const std::string& pointer, bool fixed) {
    for (Field& field : fields_)
        if (field.spec.pointer == pointer) field.fixed = fixed;
    setReadOnly(readOnly_);
}

bool RegisterForm::hasTrouble() const {
    for (const Field& field : fields_)
        if (!document_.troubleAt(field.spec.pointer).isEmpty()) return true;
    return false;
}

bool RegisterForm::focusOn(const std::string& place) {
    for (const Field& field : fields_) {
        if (place != field.spec.pointer && place.rfind(field.spec.pointer + "/", 0) != 0) continue;
        field.editor->setFocus();
        return true;
    }
    return false;
}

void RegisterForm::dress() {
    QFont bold = font();
    bold.setWeight(QFont::DemiBold);
    for (QLabel* head : heads_)
        head->setFont(bold);
    for (const Field& field : fields_)
        setInk(*field.trouble, theme_, Role::Trouble);
}

}  // namespace fettle
