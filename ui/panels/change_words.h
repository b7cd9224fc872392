// Why: what would change a verdict, in sentences: every number in them is computed (core/fleet). Thread: the
// window's.
#pragma once

#include <QStringList>

#include "core/fleet/what_would_change.h"
#include "ui/model/units.h"
#include "ui/panels/panel_content.h"

namespace fettle {

QStringList changeWords(const WhatWouldChange& change, const std::optional<RoundStanding>& standing,
                        const Units& units);

}  // namespace fettle
