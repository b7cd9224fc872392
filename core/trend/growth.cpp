#include "core/trend/growth.h"
