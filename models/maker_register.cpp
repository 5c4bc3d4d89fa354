#include "models/maker_register.h"

#include <algorithm>
#include <utility>

#include "models/register_loader.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

constexpr std::size_t faults_told = 5;

std::string toldFaults(const std::vector<RegisterFault>& faults)
{
    if (faults.size() == 1)
        return "the register cannot be read: " + faults.front().message();
    std::string text = "the register cannot be read.";
    for (std::size_t i = 0; i < faults.size() && i < faults_told; ++i)
        text.append("\n").append(faults[i].message());
    if (faults.size() > faults_told)
        text.append("\nand ").append(std::to_string(faults.size() - faults_told)).append(" more");
    return text;
}

}  // namespace

const Maker* MakerRegister::maker(const std::string& maker_id) const
{
    const auto found = std::find_if(makers.begin(), makers.end(),
                                    [&](const Maker& maker) { return maker.maker_id == maker_id; });
    return found == makers.end() ? nullptr : &*found;
}

const ItemType* MakerRegister::itemType(const std::string& type_id) const
{
    const auto found = std::find_if(item_types.begin(), item_types.end(),
                                    [&](const ItemType& type) { return type.type_id == type_id; });
    return found == item_types.end() ? nullptr : &*found;
}

const Feature* MakerRegister::feature(const std::string& feature_id) const
{
    const auto found = std::find_if(features.begin(), features.end(), [&](const Feature& one) {
        return one.feature_id == feature_id;
    });
    return found == features.end() ? nullptr : &*found;
}

std::string RegisterFault::message() const
{
    std::string text = file.filename().string();
    if (line > 0)
        text.append(", line ").append(std::to_string(line));
    if (!column.empty())
        text.append(", column ").append(column);
    text.append(": ").append(problem);
    return remedy.empty() ? text : text.append("; ").append(remedy);
}

RegisterError::RegisterError(std::vector<RegisterFault> faults)
    : std::runtime_error(toldFaults(faults)), faults_(std::move(faults))
{
}

RegisterFault notAFolder(const std::filesystem::path& folder)
{
    return {folder, 0, "", inQuotes(folder.string()) + " is not a folder",
            "name the folder that holds makers.csv and marks.csv"};
}

MakerRegister loadRegister(const std::filesystem::path& folder)
{
    std::error_code trouble;
    if (!std::filesystem::is_directory(folder, trouble))
        throw RegisterError({notAFolder(folder)});
    RegisterLoader loader(folder);
    loader.load();
    if (!loader.faults.empty())
        throw RegisterError(std::move(loader.faults));
    return std::move(loader.known);
}

}  // namespace models
