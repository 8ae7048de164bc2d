// What must hold for every design of every site, cheap enough to be asked of a hundred thousand of them.
#pragma once

#include <string>

#include "quell/design/result.h"

namespace quell::test {

/// The first thing that does not hold, with numbers; empty where all does.
std::string broken_invariant(const site::Site& site, const design::DesignResult& result);

/// Energy level down the chute of one discharge, at `points` levels from where its flow starts to `apron_level`: it may not
/// rise.
std::string rising_energy(const site::ChuteFlow& flow, double apron_level, int points);

}  // namespace quell::test
