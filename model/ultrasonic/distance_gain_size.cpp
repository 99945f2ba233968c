// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/distance_gain_size.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <complex>
#include <numbers>

#include "ultrasonic/piston_pressure.h"

namespace model {
namespace {

using Complex = std::complex<double>;

constexpr double kLargestDistance = 100;
constexpr int kDistances = 216;  // a hundred to the decade
constexpr std::array kDiscs{0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0};

double decibels(double amplitude) {
    return 20 * std::log10(amplitude);
}

double backWallEcho(double a) {
    const double k = std::numbers::pi / a;
    return std::abs(1.0 - std::polar(1.0, -k) *
                              Complex(std::cyl_bessel_j(0.0, k), std::cyl_bessel_j(1.0, k)));
}

/// Part of a disc: squares of its inner and outer radius, in crystal radii.
struct Ring {
    double inner;
    double outer;
};

/// The square of the disc whose echo is `echo`. Its edge is in `ring`: up to there the integral is
/// `inside`, lower than the echo; with the whole ring it is not lower.
double squareOfDisc(const SquaredPressure& pressure, double echo, Ring ring, Complex inside) {
    constexpr int kMostSteps = 60;
    constexpr double kExact = 1e-12;
    double low = ring.inner;
    double high = ring.outer;
    // A small disc's echo grows as its area.
    double s = std::clamp(low + (echo - std::abs(inside)) / std::abs(pressure.at(low)), low, high);
    for (int step = 0; step < kMostSteps; ++step) {
        const Complex whole = inside + pressure.integral(ring.inner, s);
        const double reached = std::abs(whole);
        (reached < echo ? low : high) = s;
        const double slope = std::real(std::conj(whole) * pressure.at(s)) / reached;
        double next = s + (echo - reached) / slope;
        if (!(next >= low && next <= high)) next = (low + high) / 2;
        const bool settled = std::abs(next - s) <= kExact * s;
        s = next;
        if (settled) break;
    }
    return s;
}

}  // namespace

double backWallEchoDb(double a) {
    assert(a > 0);
    return decibels(backWallEcho(a));
}

double discEchoDb(double a, double g) {
    if (g > SquaredPressure::kReach * a) return backWallEchoDb(a);
    return decibels(std::abs(SquaredPressure(a, g).integral(0, g * g)));
}

// From the axis outwards, so that the first disc with this echo is found. Up to the first crossing
// of the back wall, at G <= 1.61 A everywhere, the echo only rises.
DiscSize discOfEcho(double a, double echoDb) {
    assert(a >= kSmallestDistance && std::isfinite(echoDb));
    const double backWall = backWallEcho(a);
    const double asked = std::pow(10, echoDb / 20);
    const bool clipped = asked >= backWall;
    const double echo = clipped ? backWall : asked;
    const SquaredPressure pressure(a, 2 * a);
    Complex inner = 0;
    double from = 0;
    double to = pressure.panel();
    Complex all = pressure.integral(from, to);
    while (std::abs(all) < echo) {
        inner = all;
        from = to;
        to += pressure.panel();
        all += pressure.integral(from, to);
    }
    return {std::sqrt(squareOfDisc(pressure, echo, {from, to}, inner)), clipped};
}

Diagram diagram() {
    Diagram result;
    for (const double g : kDiscs) result.curves.push_back({g, {}});
    const double ratio = kLargestDistance / kSmallestDistance;
    for (int number = 0; number < kDistances; ++number) {
        const double a = kSmallestDistance * std::pow(ratio, double(number) / (kDistances - 1));
        result.a.push_back(a);
        result.backWallDb.push_back(backWallEchoDb(a));
        const SquaredPressure pressure(a, kDiscs.back());
        Complex disc = 0;
        double inner = 0;
        for (DiagramCurve& curve : result.curves) {
            const double outer = curve.g * curve.g;
            disc += pressure.integral(inner, outer);
            inner = outer;
            curve.echoDb.push_back(decibels(std::abs(disc)));
        }
    }
    return result;
}

}  // namespace model
