#include "core/store/fleet_file.h"
