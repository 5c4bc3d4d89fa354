#include "models/alignment_places.h"

#include <algorithm>

namespace models {

AlignmentPlaces::AlignmentPlaces(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                                 const GapRates& rates, Endings endings, std::size_t deepest)
{
    if (plan.cut_left > 0) {
        begin_[add(Stay::Never, Step::Free)] = plan.entry[0] * plan.cut_left;
        onward_[add(Stay::Taken, Step::Never)] = 1 - going_on;
    }
    const double all = endings == Endings::All ? rates.none : 0;
    for (std::size_t i = 0; i <= cells.size(); ++i) {
        const bool is_last = i == cells.size();
        const bool stretch = !is_last && cells[i].weights->stretch;
        const std::size_t place =
            add(Stay::Skipped, is_last || stretch ? Step::Never : Step::Match, i);
        begin_[place] = plan.entry[i] * (i == 0 ? 1 - plan.cut_left : 1);
        end_[place] = plan.exit[i] * all * (is_last ? 1 - plan.cut_right : 1);
        if (stretch)
            addStretch(cells[i], deepest);
        else if (!is_last)
            onward_[place] = cells[i].stray;
    }
    if (plan.cut_right > 0) {
        places_.back().step = Step::Free;
        end_[add(Stay::Taken, Step::Never)] =
            plan.exit.back() * rates.none * plan.cut_right * (1 - going_on);
    }
}

std::size_t AlignmentPlaces::add(Stay stay, Step step, std::size_t cell)
{
    places_.push_back({stay, step, static_cast<std::uint32_t>(cell)});
    begin_.push_back(0);
    onward_.push_back(0);
    end_.push_back(0);
    return places_.size() - 1;
}

void AlignmentPlaces::addStretch(const AlignedCell& cell, std::size_t deepest)
{
    if (cell.weights->most)
        addCounted(cell, deepest);
    else
        addUncounted(cell, deepest);
}

// A place for each number of letters still to be taken, the largest first; which number, is settled
// at the start.
void AlignmentPlaces::addCounted(const AlignedCell& cell, std::size_t deepest)
{
    const auto before = static_cast<std::uint32_t>(places_.size() - 1);
    const auto least = static_cast<std::size_t>(cell.weights->least);
    const std::size_t most = std::min(static_cast<std::size_t>(*cell.weights->most), deepest);
    const double share = 1.0 / (*cell.weights->most - cell.weights->least + 1);
    for (std::size_t left = most; left >= 1 && least <= most; --left) {
        const auto place = static_cast<std::uint32_t>(add(Stay::Never, Step::Free));
        if (left >= least)
            jumps_.push_back({before, place, share});
    }
    const double none = cell.stray + (least == 0 ? share : 0);
    jumps_.push_back({before, static_cast<std::uint32_t>(places_.size()), none});
}

// A place for each letter up to the least number, the last one for all further ones.
void AlignmentPlaces::addUncounted(const AlignedCell& cell, std::size_t deepest)
{
    const auto before = static_cast<std::uint32_t>(places_.size() - 1);
    const auto least = static_cast<std::size_t>(cell.weights->least);
    if (least <= deepest) {
        for (std::size_t taken = 1; taken < least; ++taken) {
            places_.back().step = Step::Free;
            add(Stay::Never, Step::Free);
        }
        if (least > 0)
            places_.back().step = Step::Free;
        const auto place = static_cast<std::uint32_t>(add(Stay::Taken, Step::Never));
        if (least == 0)
            jumps_.push_back({before, place, 1});
        onward_[place] = 1 - going_on;
    }
    jumps_.push_back({before, static_cast<std::uint32_t>(places_.size()), cell.stray});
}

void AlignmentPlaces::goOnward(double* row, std::size_t first, std::size_t last) const
{
    std::size_t p = first;
    for (const Jump& jump : jumps_) {
        if (jump.from < first)
            continue;
        const std::size_t from = std::min<std::size_t>(jump.from, last);
        for (; p < from; ++p)
            row[p + 1] += row[p] * onward_[p];
        if (jump.from >= last)
            break;
        if (jump.to <= last)
            row[jump.to] += row[jump.from] * jump.weight;
    }
    for (; p < last; ++p)
        row[p + 1] += row[p] * onward_[p];
}

void AlignmentPlaces::gatherOnward(double* row) const
{
    auto jump = jumps_.rbegin();
    for (std::size_t p = size(); p-- > 0;) {
        if (p + 1 < size())
            row[p] += row[p + 1] * onward_[p];
        for (; jump != jumps_.rend() && jump->from == p; ++jump)
            row[p] += row[jump->to] * jump->weight;
    }
}

}  // namespace models
