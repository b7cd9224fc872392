#include "ui/panels/nameplate_line.h"

#include <QCoreApplication>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/panels/train_line.h"

namespace fettle {

namespace {

QString said(const char* text) {
    return QCoreApplication::translate("Nameplate", text);
}

QString driverText(const Driver& driver) {
    static const char* const kinds[] = {QT_TRANSLATE_NOOP("Nameplate", "induction motor"),
                                        QT_TRANSLATE_NOOP("Nameplate", "wound-rotor motor"),
                                        QT_TRANSLATE_NOOP("Nameplate", "two-speed motor"),
                                        QT_TRANSLATE_NOOP("Nameplate", "permanent-magnet motor"),
                                        QT_TRANSLATE_NOOP("Nameplate", "reluctance motor")};
    QStringList facts = {said(kinds[int(driver.kind)])};
    if (driver.powerKw) facts << QStringLiteral("%1 kW").arg(*driver.powerKw, 0, 'g', 4);
    if (driver.poles) facts << said(QT_TRANSLATE_NOOP("Nameplate", "%1 poles")).arg(*driver.poles);
    if (driver.ratedRpm) facts << QStringLiteral("%1 r/min").arg(fixedText(*driver.ratedRpm, 0));
    if (driver.inverter) facts << said(QT_TRANSLATE_NOOP("Nameplate", "on inverter"));
    return facts.join(QStringLiteral(" "));
}

QString drivenText(const Driven& driven) {
    QString name =
        driven.kind.empty() ? said(QT_TRANSLATE_NOOP("Nameplate", "driven machine")) : shown(driven.kind);
    if (driven.blades)
        name += QStringLiteral(" ") + said(QT_TRANSLATE_NOOP("Nameplate", "%1 blades")).arg(*driven.blades);
    return name;
}

QString gearText(const Gear& gear) {
    QString name = said(QT_TRANSLATE_NOOP("Nameplate", "gear %1")).arg(shown(gear.id));
    if (gear.teeth[0] > 0) name += QStringLiteral(" %1/%2").arg(gear.teeth[0]).arg(gear.teeth[1]);
    return name;
}

QString beltText(const Belt& belt) {
    QString name = said(QT_TRANSLATE_NOOP("Nameplate", "belt %1")).arg(shown(belt.id));
    if (belt.pulleyMm[0] > 0)
        name += QStringLiteral(" %1/%2 mm").arg(belt.pulleyMm[0], 0, 'g', 4).arg(belt.pulleyMm[1], 0, 'g', 4);
    return name;
}

class Writer {
  public:
    explicit Writer(const Machine& machine) : machine_(machine), written_(machine.points.size(), false) {}

    void put(const QString& words) {
        if (!parts_.empty()) parts_.push_back({NameplatePart::Text, QStringLiteral(" \u2014 "), {}});
        parts_.push_back({NameplatePart::Text, words, {}});
    }
    // A component with the bearings and points on it.
    void component(const QString& words, const std::string& name) {
        put(words);
        bearings(name);
        pointsWhere([&](const Point& point) {
            const auto place = machine_.placeOf(point.at);
            return place && place->component == name;
        });
    }
    void bearings(const std::string& component) {
        for (const BearingPlace& place : machine_.bearings) {
            if (place.component != component) continue;
            QString position = shown(place.at).mid(int(component.size())).trimmed();
            if (position.isEmpty()) position = shown(place.at);
            const QString name = place.bearing.designation.empty() ? shown(place.bearing.type)
                                                                   : shown(place.bearing.designation);
            parts_.push_back(
                {NameplatePart::Bearing, (position + QStringLiteral(" ") + name).trimmed(), shown(place.at)});
        }
    }
    template <class Which>
    void pointsWhere(const Which& which) {
        for (std::size_t i = 0; i < machine_.points.size(); ++i) {
            if (written_[i] || !which(machine_.points[i])) continue;
            written_[i] = true;
            parts_.push_back(
                {NameplatePart::Point, shown(machine_.points[i].id), shown(machine_.points[i].id)});
        }
    }
    bool hasComponent(const std::string& name) const {
        return std::any_of(machine_.bearings.begin(), machine_.bearings.end(),
                           [&](const BearingPlace& place) { return place.component == name; });
    }
    std::vector<NameplatePart> take() { return std::move(parts_); }

  private:
    const Machine& machine_;
    std::vector<bool> written_;
    std::vector<NameplatePart> parts_;
};

}  // namespace

std::vector<NameplatePart> nameplateParts(const Machine& machine) {
    Writer writer(machine);
    writer.component(driverText(machine.driver), "driver");
    if (!machine.coupling.empty() && machine.coupling != "none")
        writer.put(said(QT_TRANSLATE_NOOP("Nameplate", "%1 coupling")).arg(shown(machine.coupling)));
    for (const Gear& gear : machine.gears)
        writer.component(gearText(gear), gear.id);
    for (const Belt& belt : machine.belts)
        writer.component(beltText(belt), belt.id);
    for (const Box& box : machine.boxes)
        writer.component(shown(box.id), box.id);
    if (machine.driven.known || writer.hasComponent("driven"))
        writer.component(drivenText(machine.driven), "driven");
    writer.pointsWhere([](const Point&) { return true; });
    return writer.take();
}

NameplateLine::NameplateLine(const Theme& theme, QWidget* parent)
    : QWidget(parent), words_(new QLabel(this)), train_(new TrainLine(theme, this)), theme_(theme) {
    setObjectName(QStringLiteral("nameplateLine"));
    words_->setObjectName(QStringLiteral("nameplateWords"));
    words_->setTextFormat(Qt::RichText);
    words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(1);
    lines->addWidget(words_);
    lines->addWidget(train_);
    connect(&theme_, &Theme::changed, this, &NameplateLine::write);
    connect(train_, &TrainLine::bearingPicked, this, &NameplateLine::bearingPicked);
    connect(train_, &TrainLine::pointPicked, this, &NameplateLine::pointPicked);
    connect(train_, &TrainLine::componentPicked, this, &NameplateLine::componentPicked);
}

void NameplateLine::setMachine(std::shared_ptr<const Machine> machine) {
    machine_ = std::move(machine);
    parts_ = machine_ ? nameplateParts(*machine_) : std::vector<NameplatePart>{};
    train_->setMachine(machine_.get());
    write();
}

void NameplateLine::setChosen(const QString& bearing, const QString& point) {
    train_->setChosen(bearing, point);
}

void NameplateLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    write();
}

// What does not fit the line stands in its tooltip.
void NameplateLine::write() {
    if (!machine_) return words_->clear();
    QString plain = shown(machine_->tag + " " + machine_->service) + QStringLiteral(": "), words;
    for (const NameplatePart& part : parts_) {
        plain += part.text + QChar(' ');
        if (part.kind == NameplatePart::Text) words += part.text;
    }
    const QString tag = shown(machine_->tag), head = tag + QStringLiteral("   ");
    QFont bold = words_->font();
    bold.setBold(true);
    const int left = width() - QFontMetrics(bold).horizontalAdvance(head);
    const QString service = shown(machine_->service);
    const QString rest = service.isEmpty() ? words : service + QStringLiteral(" \u00b7 ") + words;
    words_->setText(QStringLiteral("<b>%1</b>&nbsp; <span style='color:%2'>%3</span>")
                        .arg(tag.toHtmlEscaped(), theme_.colour(Role::MutedInk).name(),
                             words_->fontMetrics().elidedText(rest, Qt::ElideRight, left).toHtmlEscaped()));
    words_->setToolTip(plain);
    setAccessibleName(plain);
}

}  // namespace fettle
