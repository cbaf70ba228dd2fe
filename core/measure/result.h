#pragma once

#include <cstddef>
#include <string>

#include <tl/expected.hpp>

namespace shoulderline {

// Kinds of expected failure. The message carries the sentence a maker reads; the code is for
// callers and tests that must tell the kinds apart.
enum class ErrorCode {
    EmptyText,       // nothing to read
    BadText,         // text that is not a length, angle, number or expression
    WrongDimension,  // a length where an angle or a plain number belongs, or a product of lengths
    UnknownName,     // a measure, stock, part, species or rule that is not there
    Cycle,           // measures that hang on one another in a ring
    OutOfRange,      // a value outside what can be worked with
    BadFile,         // a file that cannot be read as a piece
    NewerFile,       // a file of a later version than this program reads
    CannotRead,      // the file system refused to read
    CannotWrite,     // the file system refused to write
};

// An expected failure, as a value.
struct Error {
    ErrorCode code = ErrorCode::BadText;
    std::string message;  // one sentence: what was found, and what was expected
    std::string
        where;  // the place: a measure's name, a path in a file (/parts/3/width); may be empty
    std::size_t position =
        0;  // offset in bytes of the first wrong character, where a text was read

    friend bool operator==(const Error&, const Error&) = default;
};

template <class T>
using Result = tl::expected<T, Error>;

// Wraps an error for returning from a function that returns a Result.
[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code,
                                                std::string message,
                                                std::string where = {},
                                                std::size_t position = 0) {
    return tl::unexpected<Error>(Error{code, std::move(message), std::move(where), position});
}

}  // namespace shoulderline
