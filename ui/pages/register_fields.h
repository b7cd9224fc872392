// Why: every field of the register's form as data: pointer into the description, label, unit, words, hint. A
// new key of the machine description is a row here and nothing else. Units are those of machine.schema.json.
#pragma once

#include <vector>

#include "ui/model/json_table_model.h"

namespace fettle {

struct FieldGroup {
    QString title;
    std::vector<FieldSpec> fields;
};

std::vector<FieldGroup> machineFields();  // left: what and where
std::vector<FieldGroup> driverFields();   // right: nameplate and supply

std::vector<FieldSpec> bearingColumns();
std::vector<FieldSpec> shaftColumns();
std::vector<FieldSpec> gearColumns();
std::vector<FieldSpec> beltColumns();
std::vector<FieldSpec> boxColumns();
std::vector<FieldSpec> pointColumns();
std::vector<FieldSpec> channelColumns();
std::vector<FieldSpec> nodeColumns();

}  // namespace fettle
