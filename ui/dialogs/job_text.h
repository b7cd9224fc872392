// Why: all that is known of one job as a short text to read: dates, steps, reports, verification with its
// figures. Thread: any.
#pragma once

#include <QString>

#include "core/fleet/job_desk.h"

namespace fettle {

QString jobText(const JobDetail& detail);  // rich text

}  // namespace fettle
