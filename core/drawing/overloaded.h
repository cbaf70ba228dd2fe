#pragma once

namespace shoulderline {

// One visitor out of several lambdas, so that a new kind of op breaks every visit that forgets it.
template <class... Fs>
struct Overloaded : Fs... {
    using Fs::operator()...;
};
template <class... Fs>
Overloaded(Fs...) -> Overloaded<Fs...>;

}  // namespace shoulderline
