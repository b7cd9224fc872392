#include "core/fleet/machine_desk.h"
