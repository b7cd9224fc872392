#include "core/round/e_bh.h"
