#include "ui/plot/switched_plots.h"

namespace fettle {

SwitchedPlots::SwitchedPlots(const QString& name, QWidget* parent) : QStackedWidget(parent) {
    setObjectName(name);
}

void SwitchedPlots::addPlot(PlotFrame* plot) {
    addWidget(plot);
    plot->setTitle({});
}

void SwitchedPlots::setControls(std::vector<QWidget*> controls) {
    controls_ = std::move(controls);
    showPlot(shownPlot());
}

// Hidden ones stay hidden: whether a control is shown is not the head's matter.
void SwitchedPlots::showPlot(PlotFrame* plot) {
    if (!plot) return;
    QWidget* focused = focusWidget();
    for (auto control = controls_.rbegin(); control != controls_.rend(); ++control) {
        const bool hidden = (*control)->isHidden();
        plot->addControl(*control);
        (*control)->setHidden(hidden);
    }
    setCurrentWidget(plot);
    for (QWidget* control : controls_)
        if (control == focused) control->setFocus();
}

PlotFrame* SwitchedPlots::shownPlot() const {
    return static_cast<PlotFrame*>(currentWidget());
}

QSize SwitchedPlots::minimumSizeHint() const {
    return currentWidget() ? currentWidget()->minimumSizeHint() : QSize();
}

}  // namespace fettle
