#include "tests/core/check/plane_frame.h"

#include <array>
#include <cmath>

namespace shoulderline::testing {

namespace {

using Matrix = std::array<std::array<double, 6>, 6>;

Matrix turnedBy(const PlaneNode& a, const PlaneNode& b, double& length) {
    const double dx = b.x - a.x;
    const double dz = b.z - a.z;
    length = std::hypot(dx, dz);
    const double c = dx / length;
    const double s = dz / length;
    Matrix t{};
    for (std::size_t end = 0; end < 6; end += 3) {
        t[end][end] = c;
        t[end][end + 1] = s;
        t[end + 1][end] = -s;
        t[end + 1][end + 1] = c;
        t[end + 2][end + 2] = 1.0;
    }
    return t;
}

Matrix localStiffness(const PlaneBeam& beam, double l) {
    const double a = beam.ea / l;
    const double k = beam.ei / (l * l * l);
    return {{{a, 0, 0, -a, 0, 0},
             {0, 12 * k, 6 * k * l, 0, -12 * k, 6 * k * l},
             {0, 6 * k * l, 4 * k * l * l, 0, -6 * k * l, 2 * k * l * l},
             {-a, 0, 0, a, 0, 0},
             {0, -12 * k, -6 * k * l, 0, 12 * k, -6 * k * l},
             {0, 6 * k * l, 2 * k * l * l, 0, -6 * k * l, 4 * k * l * l}}};
}

std::array<std::size_t, 6> placesOf(const PlaneBeam& beam) {
    return {3 * beam.a, 3 * beam.a + 1, 3 * beam.a + 2, 3 * beam.b, 3 * beam.b + 1, 3 * beam.b + 2};
}

}  // namespace

std::vector<BeamMoments> solvePlaneFrame(const std::vector<PlaneNode>& nodes,
                                         const std::vector<PlaneBeam>& beams) {
    const std::size_t n = 3 * nodes.size();
    std::vector<std::vector<double>> k(n, std::vector<double>(n, 0.0));
    std::vector<double> f(n, 0.0);
    for (const PlaneBeam& beam : beams) {
        double l = 0.0;
        const Matrix t = turnedBy(nodes[beam.a], nodes[beam.b], l);
        const Matrix local = localStiffness(beam, l);
        const auto at = placesOf(beam);
        for (std::size_t i = 0; i < 6; ++i) {
            for (std::size_t j = 0; j < 6; ++j) {
                for (std::size_t p = 0; p < 6; ++p) {
                    for (std::size_t q = 0; q < 6; ++q) {
                        k[at[i]][at[j]] += t[p][i] * local[p][q] * t[q][j];
                    }
                }
            }
        }
    }
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        f[3 * i] = nodes[i].force;
        f[3 * i + 1] = nodes[i].forceUpright;
        const bool isHeld[2] = {nodes[i].isHeldLevel, nodes[i].isHeldUpright};
        for (std::size_t way = 0; way < 2; ++way) {
            if (isHeld[way]) {
                const std::size_t row = 3 * i + way;
                for (std::size_t j = 0; j < n; ++j) {
                    k[row][j] = k[j][row] = 0.0;
                }
                k[row][row] = 1.0;
                f[row] = 0.0;
            }
        }
    }
    // Gauss and Jordan, largest pivot of the column.
    for (std::size_t c = 0; c < n; ++c) {
        std::size_t pivot = c;
        for (std::size_t r = c; r < n; ++r) {
            if (std::abs(k[r][c]) > std::abs(k[pivot][c])) {
                pivot = r;
            }
        }
        std::swap(k[c], k[pivot]);
        std::swap(f[c], f[pivot]);
        for (std::size_t r = 0; r < n; ++r) {
            const double factor = r == c ? 0.0 : k[r][c] / k[c][c];
            for (std::size_t j = c; j < n && factor != 0.0; ++j) {
                k[r][j] -= factor * k[c][j];
            }
            f[r] -= factor * f[c];
        }
    }
    std::vector<double> u(n);
    for (std::size_t i = 0; i < n; ++i) {
        u[i] = f[i] / k[i][i];
    }
    std::vector<BeamMoments> moments;
    for (const PlaneBeam& beam : beams) {
        double l = 0.0;
        const Matrix t = turnedBy(nodes[beam.a], nodes[beam.b], l);
        const Matrix local = localStiffness(beam, l);
        const auto at = placesOf(beam);
        double ends[2] = {0.0, 0.0};
        for (std::size_t end = 0; end < 2; ++end) {
            for (std::size_t p = 0; p < 6; ++p) {
                for (std::size_t j = 0; j < 6; ++j) {
                    ends[end] += local[end == 0 ? 2 : 5][p] * t[p][j] * u[at[j]];
                }
            }
        }
        moments.push_back({ends[0], ends[1]});
    }
    return moments;
}

}  // namespace shoulderline::testing
