#include "core/round/round.h"
