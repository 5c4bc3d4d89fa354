#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/exchange/tei.h"
#include "models/exchange/tei_elements.h"

namespace models {

// Writes the places of a text once, in order, with the marks around them. For writeTei alone.
class TeiWriter {
public:
    explicit TeiWriter(const TeiText& text);

    std::string write();

private:
    struct Place {
        std::size_t line = 0;
        std::optional<std::size_t> cell;  // nullopt: the line's beginning
    };

    void writeStretch(std::size_t from, std::size_t to, std::size_t depth,
                      const TeiContext& context);
    void writeMark(const TeiMark& mark, const TeiContext& context);
    void writePlaces(std::size_t from, std::size_t to, const TeiContext& context);
    void writeLineBegin(std::size_t line);
    void writeCells(std::size_t line, std::size_t from, std::size_t to, int level,
                    const TeiContext& context);
    std::vector<Cell> cellsOf(const TeiMark& mark) const;

    const std::vector<Line>& lines_;
    const std::vector<TeiMark>& marks_;
    std::vector<Place> places_;
    std::size_t next_mark_ = 0;
    std::string out_;
};

}  // namespace models
