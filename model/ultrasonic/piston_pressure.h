// SPDX-License-Identifier: Apache-2.0
// The sound pressure of a circular piston over a plane across its axis, squared: what a reflector
// in that plane sends back to the piston, place by place (distance_gain_size.h has the model).
#pragma once

#include <complex>
#include <vector>

namespace model {

/// p^2 at one distance over s, the square of the distance from the axis in crystal radii.
class SquaredPressure {
public:
    /// Up to how many times a the series of the pressure holds.
    static constexpr double kReach = 4;

    /// At `a` = path / N >= 0.5, for s up to largestG^2, with largestG <= kReach * a.
    SquaredPressure(double a, double largestG);

    [[nodiscard]] std::complex<double> at(double s) const;

    /// INT from..to p^2 ds; its magnitude from 0 to G^2 is the echo of the disc G.
    [[nodiscard]] std::complex<double> integral(double from, double to) const;

    /// Over how much of s the pressure turns little enough for eight points of integration.
    [[nodiscard]] double panel() const { return panel_; }

private:
    double kappa_;
    double panel_;
    std::vector<std::complex<double>> series_;
};

}  // namespace model
