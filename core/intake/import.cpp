#include "core/intake/import.h"
