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

void SwitchedPlots::showPlot(PlotFrame* plot) {
    if (!plot) return;
    QWidget* focused = focusWidget();
    for (auto control = controls_.rbegin(); control != controls_.rend(); ++control)
        plot->addControl(*control);
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
