#include "ui/pages/register_fields.h"

#include "ui/theme/tr.h"

namespace fettle {

namespace {

QStringList words(const char* text) {
    return QString::fromLatin1(text).split(u' ');
}

FieldSpec text(const char* pointer, const QString& label, const QString& hint = {}, int width = 24) {
    return {pointer, label, {}, FieldKind::Text, {}, hint, width};
}

FieldSpec suggested(const char* pointer, const QString& label, const char* some, const QString& hint = {}) {
    return {pointer, label, {}, FieldKind::Text, words(some), hint, 18};
}

FieldSpec choice(const char* pointer, const QString& label, const char* all, const QString& hint = {}) {
    return {pointer, label, {}, FieldKind::Choice, words(all), hint, 16};
}

FieldSpec number(const char* pointer, const QString& label, const QString& unit = {},
                 const QString& hint = {}) {
    return {pointer, label, unit, FieldKind::Number, {}, hint, 10};
}

FieldSpec owner(const char* name, const QString& label, int width = 12) {
    return {name, label, {}, FieldKind::Choice, {}, {}, width};
}

FieldSpec worked(const char* name, const QString& label, const QString& unit, int width) {
    return {name, label, unit, FieldKind::Text, {}, {}, width};
}

FieldSpec inverter(FieldSpec field) {
    field.onlyWhen = "/driver/supply=inverter";
    return field;
}

FieldSpec narrow(FieldSpec field, int width) {
    field.width = width;
    return field;
}

}  // namespace

std::vector<FieldGroup> machineFields() {
    FieldSpec standby = choice("/standby", tr("Standby"), "yes no", tr("another machine can take over"));
    standby.kind = FieldKind::Yes;
    return {{tr("Machine"),
             {text("/tag", tr("Tag"), tr("names the machine everywhere; 1 to 100 letters")),
              text("/asset", tr("Asset number")),
              text("/service", tr("Service"), tr("what it does, in shop words")), text("/site", tr("Site")),
              text("/area", tr("Area")),
              choice("/criticality", tr("Criticality"), "A B C", tr("A: stops the works; C: can wait")),
              standby, number("/mains_hz", tr("Mains"), tr("Hz"), tr("the site's grid")),
              choice("/support", tr("Support"), "rigid flexible unknown",
                     tr("first natural frequency of machine on its base above (rigid) or below speed"))}},
            {tr("Coupling and driven machine"),
             {suggested("/coupling", tr("Coupling"), "flexible rigid belt gear none"),
              suggested("/driven/kind", tr("Driven machine"),
                        "fan pump compressor conveyor crusher mill mixer blower screen elevator"),
              number("/driven/blades", tr("Blades or vanes")),
              number("/driven/speed_ratio", tr("Speed ratio"), {},
                     tr("driven over driver; only where neither gears nor belts give it")),
              number("/driven/speed_ratio_tol", tr("Its half-width"), tr("of 1"))}}};
}

std::vector<FieldGroup> driverFields() {
    return {
        {tr("Motor, from the nameplate"),
         {choice("/driver/kind", tr("Kind"), "induction wound_rotor two_speed pm_synchronous reluctance"),
          number("/driver/power_kw", tr("Power"), tr("kW")),
          number("/driver/poles", tr("Poles"), {}, tr("poles, not pairs; this or the rated speed is needed")),
          number("/driver/rated_rpm", tr("Rated speed"), tr("r/min")),
          number("/driver/shaft_height_mm", tr("Shaft height"), tr("mm"), tr("IEC frame size")),
          number("/driver/rotor_bars", tr("Rotor bars")), number("/driver/stator_slots", tr("Stator slots")),
          choice("/driver/thermal_class", tr("Thermal class"), "Y A E B F H N R", tr("IEC 60085"))}},
        {tr("Supply"),
         {choice("/driver/supply", tr("Supply"), "mains inverter"),
          inverter(number("/driver/output_hz_range/0", tr("Output from"), tr("Hz"))),
          inverter(number("/driver/output_hz_range/1", tr("Output to"), tr("Hz"))),
          inverter(number("/driver/rated_hz", tr("Output at rated speed"), tr("Hz"))),
          inverter(number("/driver/carrier_hz", tr("Switching frequency"), tr("Hz"))),
          inverter(number("/driver/rpm_min", tr("Least speed"), tr("r/min"))),
          inverter(number("/driver/rpm_max", tr("Most speed"), tr("r/min")))}}};
}

std::vector<FieldSpec> bearingColumns() {
    return {owner("@component", tr("On"), 8),
            owner("@position", tr("Position"), 8),
            text("/designation", tr("Designation"), tr("ISO; prefixes and suffixes after it are passed over"),
                 12),
            narrow(choice("/type", tr("Type"),
                          "deep_groove angular cylindrical_roller spherical_roller taper_roller sleeve"),
                   15),
            worked("@known", tr("What is looked for, in orders"), {}, 54),
            narrow(number("/rolling_elements", tr("Elements"), {}, tr("in one row")), 4),
            narrow(number("/element_mm", tr("Element"), tr("mm"), tr("diameter of a ball or roller")), 4),
            narrow(number("/pitch_mm", tr("Pitch"), tr("mm"), tr("circle through the elements' centres")), 4),
            narrow(number("/contact_deg", tr("Contact"), tr("deg")), 4),
            narrow(number("/orders/bpfo", tr("BPFO"), {}, tr("order of the bearing's own shaft")), 7),
            narrow(number("/orders/bpfi", tr("BPFI")), 7),
            narrow(number("/orders/bsf", tr("BSF"), {}, tr("spin frequency, not twice it")), 7),
            narrow(number("/orders/ftf", tr("FTF"), {}, tr("cage")), 7),
            narrow(number("/rows", tr("Rows")), 4),
            narrow(choice("/turning", tr("Turning ring"), "inner outer"), 8),
            narrow(suggested("/source", tr("Source"), "nameplate register maker measured"), 14)};
}

std::vector<FieldSpec> shaftColumns() {
    return {text("/id", tr("Shaft"), {}, 14), choice("/of", tr("Of"), "driver driven"),
            worked("@speed", tr("Turns at"), tr("r/min"), 16)};
}

std::vector<FieldSpec> gearColumns() {
    return {text("/id", tr("Gear"), {}, 12),
            text("/from", tr("From shaft"), {}, 11),
            text("/to", tr("To shaft"), {}, 11),
            choice("/kind", tr("Kind"), "spur helical double_helical bevel hypoid worm planetary"),
            number("/teeth/0", tr("Teeth on from")),
            number("/teeth/1", tr("Teeth on to")),
            narrow(number("/sun", tr("Sun")), 7),
            narrow(number("/ring", tr("Ring")), 7),
            narrow(number("/planet", tr("Planet")), 8),
            narrow(number("/planets", tr("Planets")), 9),
            narrow(choice("/fixed", tr("Fixed"), "ring sun carrier"), 10)};
}

std::vector<FieldSpec> beltColumns() {
    return {text("/id", tr("Belt"), {}, 12),
            text("/from", tr("From shaft"), {}, 11),
            text("/to", tr("To shaft"), {}, 11),
            choice("/kind", tr("Kind"), "vee flat toothed"),
            narrow(number("/pulley_mm/0", tr("Pulley on from"), tr("mm")), 18),
            narrow(number("/pulley_mm/1", tr("Pulley on to"), tr("mm")), 16),
            narrow(number("/teeth/0", tr("Teeth on from")), 13),
            narrow(number("/teeth/1", tr("Teeth on to")), 12),
            narrow(number("/length_mm", tr("Length"), tr("mm")), 12)};
}

std::vector<FieldSpec> boxColumns() {
    return {text("/id", tr("Box or stand"), {}, 18), text("/shaft", tr("On shaft"), {}, 12)};
}

std::vector<FieldSpec> pointColumns() {
    return {
        text("/id", tr("Point"), {}, 12),
        suggested("/at", tr("At"), "driver driven",
                  tr("driver, driven or the id of a gear, belt, shaft or box, "
                     "then perhaps DE or NDE")),
        choice("/mount", tr("Mount"), "bearing_housing end_shield frame foot fin_or_cowl unknown"),
        narrow(choice("/fixing", tr("Fixing"), "stud adhesive magnet clamp"), 12),
        narrow(number("/usable_hz/0", tr("Usable from"), tr("Hz")), 15),
        narrow(number("/usable_hz/1", tr("Usable to"), tr("Hz")), 13),
        narrow(number("/range", tr("Range"), {}, tr("full scale, in the unit of the channels")), 8),
        narrow(number("/noise_per_rt_hz", tr("Noise"), tr("per root Hz")), 18),
        narrow(number("/interval_min", tr("Every"), tr("min"), tr("from one recording to the next")), 12)};
}

std::vector<FieldSpec> channelColumns() {
    return {owner("@point", tr("Point"), 12), text("/name", tr("Channel"), {}, 12),
            choice("/quantity", tr("Quantity"),
                   "acceleration velocity displacement flux temperature current tacho"),
            suggested("/unit", tr("Unit"), "g m/s2 mm/s 1", tr("g, m/s2, mm/s; 1 for flux")),
            choice("/direction", tr("Direction"), "horizontal vertical axial radial unknown")};
}

std::vector<FieldSpec> nodeColumns() {
    return {owner("@point", tr("Point"), 12), text("/id", tr("Node"), {}, 14),
            text("/from", tr("Fitted from"), tr("2025-11-03; empty: always"), 14),
            text("/to", tr("To"), tr("empty: still there"), 14)};
}

}  // namespace fettle
