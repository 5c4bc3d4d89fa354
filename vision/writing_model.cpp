#include "vision/writing_model.h"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>

#include "vision/weights_file.h"

namespace vision {

namespace {

// A code is a run of capitals and digits without a rule; how long one is on the mean, and the share
// of each other sign in it, are choices.
constexpr double characters_of_code = 8, outside_codes = 0.002;

double charactersOfKind(char kind)
{
    if (kind == 'A' || kind == 'a')
        return 26;
    return kind == '5' ? 5 : 1;
}

}  // namespace

WritingModel WritingModel::load(const std::filesystem::path& file)
{
    const auto bytes = checkedWeights(file.parent_path(), file.filename().string());
    std::istringstream in(std::string(bytes.begin(), bytes.end()));
    const auto damaged = [&] {
        return unusableWeights(file, "is no table of how marks are written");
    };
    WritingModel model;
    std::string word;
    if (!(in >> word >> model.order_) || word != "order" || model.order_ < 1 || model.order_ > 12)
        throw damaged();
    for (double count = 0; in >> word >> count;) {
        if (word.size() > model.order_ || !(count > 0))
            throw damaged();
        if (word == lineBegin())  // follows nothing
            continue;
        model.counts_[word] = count;
        Followers& followers = model.followers_[word.substr(0, word.size() - 1)];
        followers.count += count;
        followers.kinds += 1;
    }
    if (!in.eof() || model.counts_.empty() || model.followers_[""].kinds < 1)
        throw damaged();
    return model;
}

char WritingModel::kindOf(std::string_view character)
{
    if (character == "\xE2\x86\x91")  // the property arrow
        return '@';
    if (character.size() != 1)
        return unknown;
    const char c = character.front();
    if (c >= 'A' && c <= 'Z')
        return 'A';
    if (c >= 'a' && c <= 'z')
        return 'a';
    if (c >= '4' && c <= '8')
        return '5';
    return c == ' ' ? '_' : c;
}

// The longer the run before, the more it knows; what it has not seen it leaves to the shorter one.
double WritingModel::probability(std::string_view before, char kind) const
{
    double share = 1 / followers_.at("").kinds;  // what the shortest run backs off to: all alike
    for (std::size_t length = 0; length <= before.size(); ++length) {
        std::string run(before.substr(before.size() - length));
        const auto followers = followers_.find(run);
        if (followers == followers_.end())
            break;
        run += kind;
        const auto seen = counts_.find(run);
        const double count = seen == counts_.end() ? 0 : seen->second;
        share = (count + followers->second.kinds * share) /
                (followers->second.count + followers->second.kinds);
    }
    return share;
}

double WritingModel::logProbability(std::string_view before, char kind) const
{
    if (kind == unknown)
        return 0;
    const std::size_t gap = before.rfind(unknown);  // what lies behind it cannot be known
    if (gap != std::string_view::npos)
        before.remove_prefix(gap + 1);
    if (before.size() > reach())
        before.remove_prefix(before.size() - reach());
    return std::log(probability(before, kind) / charactersOfKind(kind));
}

double WritingModel::logRatio(std::string_view before, char kind) const
{
    if (kind == unknown)
        return 0;
    return logProbability(before, kind) - logProbability({}, kind);
}

double WritingModel::logRatioInCodes(char kind) const
{
    if (kind == unknown)
        return 0;
    const bool in_codes = kind == 'A' || (kind >= '0' && kind <= '9');
    const double share = kind == line_end ? 1 / characters_of_code
                         : in_codes       ? 1 / 36.0
                                          : outside_codes;
    return std::log(share) - logProbability({}, kind);
}

}  // namespace vision
