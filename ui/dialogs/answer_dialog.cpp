#include "ui/dialogs/answer_dialog.h"

#include <QDialogButtonBox>
#include <QEvent>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

// As tall as its form where the screen has room for it, else it scrolls: the buttons stay in sight.
class FormRoom : public QScrollArea {
  public:
    FormRoom(QFormLayout* form, QWidget* parent) : QScrollArea(parent) {
        auto* fields = new QWidget(this);
        form->setContentsMargins(0, 0, 0, 0);
        fields->setLayout(form);
        setWidget(fields);
        setWidgetResizable(true);
        setFrameStyle(QFrame::NoFrame);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        setFocusPolicy(Qt::NoFocus);
    }
    QSize sizeHint() const override { return widget()->sizeHint(); }
    QSize minimumSizeHint() const override {
        const int room = screen()->availableSize().height() - kAroundEms * fontMetrics().height();
        const QSize wanted = widget()->minimumSizeHint();
        return {wanted.width(), std::min(wanted.height(), std::max(room, 0))};
    }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (watched == widget() && event->type() == QEvent::LayoutRequest) updateGeometry();
        return QScrollArea::eventFilter(watched, event);
    }

  private:
    static constexpr int kAroundEms = 14;  // title, explanation, what is lacking, buttons
};

}  // namespace

AnswerDialog::AnswerDialog(const Theme& theme, const QString& name, const QString& title, const QString& yes,
                           QWidget* parent)
    : QDialog(parent), explanation_(new QLabel(this)), lack_(new QLabel(this)), form_(new QFormLayout) {
    setObjectName(name);
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    explanation_->setWordWrap(true);
    explanation_->hide();
    lack_->setObjectName(QStringLiteral("lack"));
    lack_->setWordWrap(true);
    setInk(*lack_, theme, Role::Trouble);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    yes_ = buttons->addButton(yes, QDialogButtonBox::AcceptRole);
    yes_->setObjectName(QStringLiteral("yes"));
    buttons->button(QDialogButtonBox::Cancel)->setObjectName(QStringLiteral("no"));
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(explanation_);
    all->addWidget(new FormRoom(form_, this), 1);
    all->addWidget(lack_);
    all->addWidget(buttons);
    setMinimumWidth(fontMetrics().averageCharWidth() * 62);
}

void AnswerDialog::explain(const QString& text) {
    explanation_->setText(text);
    explanation_->setVisible(!text.isEmpty());
}

// Words that wrap keep the height they need at this width; the form, which scrolls, gives way.
void AnswerDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    const int needs = explanation_->heightForWidth(layout()->contentsRect().width());
    explanation_->setMinimumHeight(std::max(needs, 0));
}

void AnswerDialog::lacks(const QString& what) {
    lack_->setText(what);
    lack_->setVisible(!what.isEmpty());
    yes_->setEnabled(what.isEmpty());
}

void AnswerDialog::addField(const QString& label, QWidget* field, const char* name) {
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(label);
    form_->addRow(label, field);
}

}  // namespace fettle
