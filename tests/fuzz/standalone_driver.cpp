// Runs a fuzz target without libFuzzer, so that every build tests it: replays the inputs given as
// files or folders, then feeds it seeded mutations of them.
//
//   driver [--rounds=N] [--seed=S] FILE_OR_FOLDER...

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <string_view>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

constexpr std::size_t kLargestInput = 64 * 1024;
constexpr std::size_t kLargestRepeat = 64;  // bytes copied by one mutation

using Input = std::vector<std::uint8_t>;
using Engine = std::mt19937_64;  // the same numbers on every platform, unlike the distributions

std::size_t below(Engine& engine, std::size_t limit) {
    return limit == 0 ? 0 : static_cast<std::size_t>(engine() % limit);
}

Input readInput(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return Input(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
}

// The files of a folder in the order of their names, so that a seed means the same everywhere.
void collect(const std::filesystem::path& path, std::vector<Input>& inputs) {
    if (!std::filesystem::is_directory(path)) {
        inputs.push_back(readInput(path));
        return;
    }
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
        if (entry.is_regular_file()) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    for (const auto& file : files) {
        inputs.push_back(readInput(file));
    }
}

// Puts part of `other` in at a random place.
void splice(Input& input, const Input& other, Engine& engine) {
    const std::size_t from = below(engine, other.size());
    const std::size_t size = std::min(other.size() - from, 1 + below(engine, kLargestRepeat));
    const std::size_t at = below(engine, input.size() + 1);
    const Input piece(other.begin() + static_cast<std::ptrdiff_t>(from),
                      other.begin() + static_cast<std::ptrdiff_t>(from + size));
    input.insert(input.begin() + static_cast<std::ptrdiff_t>(at), piece.begin(), piece.end());
}

void mutate(Input& input, const std::vector<Input>& others, Engine& engine) {
    const auto place = static_cast<std::ptrdiff_t>(below(engine, input.size()));
    const auto byte = static_cast<std::uint8_t>(below(engine, 256));
    switch (below(engine, 6)) {
        case 0:
            input.insert(input.begin() + place, byte);
            break;
        case 1:
            if (!input.empty()) {
                input[static_cast<std::size_t>(place)] = byte;
            }
            break;
        case 2:
            if (!input.empty()) {
                input[static_cast<std::size_t>(place)] ^=
                    static_cast<std::uint8_t>(1U << below(engine, 8));
            }
            break;
        case 3:
            if (!input.empty()) {
                const std::size_t rest = input.size() - static_cast<std::size_t>(place);
                const auto size = static_cast<std::ptrdiff_t>(1 + below(engine, rest));
                input.erase(input.begin() + place, input.begin() + place + size);
            }
            break;
        case 4:
            splice(input, others[below(engine, others.size())], engine);
            break;
        default:
            splice(input, Input(input), engine);
            break;
    }
}

bool readOption(std::string_view argument, std::string_view name, std::uint64_t& value) {
    if (argument.substr(0, name.size()) != name) {
        return false;
    }
    const auto digits = argument.substr(name.size());
    return std::from_chars(digits.data(), digits.data() + digits.size(), value).ptr ==
           digits.data() + digits.size();
}

}  // namespace

int main(int argc, char** argv) {
    std::uint64_t rounds = 0;
    std::uint64_t seed = 1;
    std::vector<Input> inputs;
    for (int i = 1; i < argc; ++i) {
        const std::string_view argument = argv[i];
        if (readOption(argument, "--rounds=", rounds) || readOption(argument, "--seed=", seed)) {
            continue;
        }
        if (!std::filesystem::exists(argument)) {
            std::fprintf(stderr, "no such input: %s\n", argv[i]);
            return 2;
        }
        collect(argument, inputs);
    }
    if (inputs.empty()) {
        std::fprintf(stderr, "no inputs to start from\n");
        return 2;
    }
    for (const Input& input : inputs) {
        LLVMFuzzerTestOneInput(input.data(), input.size());
    }
    Engine engine(seed);
    for (std::uint64_t round = 0; round < rounds; ++round) {
        Input input = inputs[below(engine, inputs.size())];
        for (std::size_t steps = 1 + below(engine, 8); steps > 0; --steps) {
            mutate(input, inputs, engine);
        }
        input.resize(std::min(input.size(), kLargestInput));
        LLVMFuzzerTestOneInput(input.data(), input.size());
    }
    std::printf("%zu inputs replayed, %llu mutations run, seed %llu\n",
                inputs.size(),
                static_cast<unsigned long long>(rounds),
                static_cast<unsigned long long>(seed));
    return 0;
}
