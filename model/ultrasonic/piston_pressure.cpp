// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/piston_pressure.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

namespace model {
namespace {

using Complex = std::complex<double>;

/// Gauss-Legendre, eight points of -1 to 1 in pairs: Abramowitz and Stegun, table 25.4.
struct GaussPair {
    double place;
    double weight;
};
constexpr std::array<GaussPair, 4> kGauss{{{0.183434642495650, 0.362683783378362},
                                           {0.525532409916329, 0.313706645877887},
                                           {0.796666477413627, 0.222381034453374},
                                           {0.960289856497536, 0.101228536290376}}};

/// INT 0..1 t^k exp(i alpha t) dt for k from 0 to `count` - 1. Downwards, as upwards rounding
/// errors grow; what is taken for the first integral is forgotten on the way.
std::vector<Complex> powerMoments(double alpha, int count) {
    constexpr int kLeadIn = 24;
    const Complex end = std::polar(1.0, alpha);
    std::vector<Complex> moments(static_cast<std::size_t>(count));
    Complex moment = 0;
    for (int k = count + kLeadIn; k > 0; --k) {
        moment = (end - Complex(-alpha * moment.imag(), alpha * moment.real())) / double(k);
        if (k <= count) moments[static_cast<std::size_t>(k - 1)] = moment;
    }
    return moments;
}

/// How many terms (x/2)^2k / k!^2 of J0 matter at x.
int termsOf(double x) {
    constexpr double kNegligible = 1e-15;
    const double square = x * x / 4;
    double term = 1;
    int k = 0;
    while (term > kNegligible || double(k) * k < square) {
        ++k;
        term *= square / (double(k) * k);
    }
    return k + 1;
}

}  // namespace

// J0 as its power series leaves, term by term, the moments of exp(i kappa x^2 / 2), known in closed
// form: the pressure is a polynomial in s. Its terms reach exp(kappa r) at most before they cancel,
// which at kappa r = 8 pi, the largest that is allowed, leaves six digits.
SquaredPressure::SquaredPressure(double a, double largestG)
    : kappa_(2 * std::numbers::pi / a), panel_(2 / kappa_) {
    assert(a >= 0.5 && largestG > 0 && largestG <= kReach * a);
    series_ = powerMoments(kappa_ / 2, termsOf(kappa_ * largestG));
    double factor = 0.5 * kappa_;
    for (std::size_t k = 0; k < series_.size(); ++k) {
        if (k > 0) factor *= -kappa_ * kappa_ / (4 * double(k) * double(k));
        series_[k] *= factor;
    }
}

Complex SquaredPressure::at(double s) const {
    double real = 0;
    double imaginary = 0;
    for (auto term = series_.rbegin(); term != series_.rend(); ++term) {
        real = real * s + term->real();
        imaginary = imaginary * s + term->imag();
    }
    const Complex pressure(real, imaginary);
    return -pressure * pressure * std::polar(1.0, kappa_ * s);
}

Complex SquaredPressure::integral(double from, double to) const {
    const int panels = std::max(1, static_cast<int>(std::ceil((to - from) / panel_)));
    const double half = (to - from) / panels / 2;
    Complex sum = 0;
    for (int panel = 0; panel < panels; ++panel) {
        const double middle = from + (2 * panel + 1) * half;
        for (const GaussPair& pair : kGauss)
            sum += pair.weight * (at(middle - pair.place * half) + at(middle + pair.place * half));
    }
    return sum * half;
}

}  // namespace model
