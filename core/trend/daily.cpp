#include "core/trend/daily.h"
