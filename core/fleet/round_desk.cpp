#include "core/fleet/round_desk.h"
