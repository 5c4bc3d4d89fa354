#include "models/archive/entry.h"

namespace models {

namespace {

using sql::Row;

// The hash and extension under which the photo's original is kept, copied in if there is a file.
CopiedOriginal keepOriginal(const Entry& entry, const PhotoRecord& photo, OriginalsCopy& originals)
{
    const std::string sha256 = photo.sha256.empty() ? sha256OfFile(photo.file) : photo.sha256;
    const std::vector<Row> known =
        entry.database.rows("original", "WHERE sha256 = :sha256", {{"sha256", sha256}});
    if (known.empty()) {
        const CopiedOriginal copied = originals.add(photo.file, sha256, photo.original_name);
        insertAuthored(entry, "original",
                       {{"sha256", copied.sha256},
                        {"extension", copied.extension},
                        {"byte_count", static_cast<std::int64_t>(copied.byte_count)}});
        return copied;
    }
    // The same original under another name; the copy is made again only if it was lost.
    const std::string extension = known.front().text("extension");
    if (!photo.file.empty())
        originals.add(photo.file, sha256, "original." + extension);
    return {sha256, extension, 0};
}

}  // namespace

PhotoRecord savePhoto(const Entry& entry, const std::string& item_id, PhotoRecord photo,
                      OriginalsCopy& originals)
{
    if (photo.original_name.empty())
        photo.original_name = photo.file.filename().string();
    const CopiedOriginal original = keepOriginal(entry, photo, originals);
    photo.id = idOrNew(photo.id);
    photo.sha256 = original.sha256;
    photo.file = originalPathIn(entry.folder, original.sha256, original.extension);
    photo.recorded_by = entry.author;
    photo.recorded_at = entry.now;
    insertAuthored(entry, "photo",
                   {{"id", photo.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "photo", "item_id", item_id)},
                    {"sha256", photo.sha256},
                    {"original_name", photo.original_name},
                    {"width_px", std::int64_t{photo.width_px}},
                    {"height_px", std::int64_t{photo.height_px}},
                    {"taken_at", photo.taken_at},
                    {"camera", photo.camera},
                    {"lens", photo.lens},
                    {"photographer", photo.photographer},
                    {"credit", photo.credit},
                    {"permission", photo.permission}});
    return photo;
}

std::vector<PhotoRecord> loadPhotos(const sql::Database& database,
                                    const std::filesystem::path& folder, const std::string& item_id)
{
    std::vector<PhotoRecord> photos;
    for (const Row& row : childRows(database, "photo", "item_id", item_id)) {
        PhotoRecord photo;
        photo.id = row.text("id");
        photo.sha256 = row.text("sha256");
        photo.original_name = row.text("original_name");
        photo.width_px = static_cast<int>(row.whole("width_px"));
        photo.height_px = static_cast<int>(row.whole("height_px"));
        photo.taken_at = row.text("taken_at");
        photo.camera = row.text("camera");
        photo.lens = row.text("lens");
        photo.photographer = row.text("photographer");
        photo.credit = row.text("credit");
        photo.permission = row.text("permission");
        photo.recorded_by = row.text("recorded_by");
        photo.recorded_at = row.text("recorded_at");
        const std::vector<Row> original =
            database.rows("original", "WHERE sha256 = :sha256", {{"sha256", photo.sha256}});
        if (original.empty())
            row.refuse("sha256");
        photo.file = originalPathIn(folder, photo.sha256, original.front().text("extension"));
        photos.push_back(photo);
    }
    return photos;
}

}  // namespace models
